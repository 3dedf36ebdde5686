/** The one shape of every place where a printed thing can go: ask how it is, and print on it. */
import type { Refusal } from '../domain/refusal.ts';

export type DotDensity = 203 | 300 | 600;

export const mmPerInch = 25.4;

/** What is to be printed: one page, as a document and as the dots of the printer. A destination takes what it can. */
export interface PrintJob {
  readonly title: string;
  /** One page of `widthMm` × `heightMm`. */
  readonly pdf: Uint8Array;
  /** The same page at `dpi`, one pixel for each dot. */
  readonly png: Uint8Array;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dpi: DotDensity;
  readonly copies: number;
  /** Ink may fall off the stock when the offset moves it: true of the calibration pattern alone, whose rulers run over the edges. */
  readonly runsOverEdges?: boolean;
}

/** Source of the words: `printer-state`, RFC 8011 §5.4.11; `unknown` where the printer does not say. */
export type PrinterCondition = 'idle' | 'processing' | 'stopped' | 'unknown';

export interface PrinterState {
  readonly condition: PrinterCondition;
  /** Keywords of `printer-state-reasons`, RFC 8011 §5.4.12, such as `media-empty` or `cover-open`; none where all is well. */
  readonly reasons: readonly string[];
  /** Why a job would not come out now. Absent where nothing is known to stand in its way. */
  readonly problem?: Refusal;
  /** What the printer calls itself. */
  readonly makeAndModel?: string;
}

/** Source of the words: `job-state`, RFC 8011 §5.3.7. */
export type JobState =
  | 'pending'
  | 'pending-held'
  | 'processing'
  | 'processing-stopped'
  | 'canceled'
  | 'aborted'
  | 'completed';

export interface JobProgress {
  readonly state: JobState;
  readonly jobId?: string;
  /** What keeps the job from coming out at this moment; a person can put it right and the job goes on. */
  readonly problem?: Refusal;
}

export type DocumentFormat = 'application/pdf' | 'image/pwg-raster' | 'label graphics';

export interface Printed {
  readonly printed: true;
  readonly format: DocumentFormat;
  /** True where the printer said that the job came to its end; false where the job was handed over and no more is known. */
  readonly confirmed: boolean;
  readonly jobId?: string;
  /** The files that were written. */
  readonly files?: readonly string[];
}

export type PrintOutcome = Printed | Refusal;

export interface PrintOptions {
  /** Takes the job back where the printer still holds it; the outcome is then `printer-job-canceled`. */
  readonly signal?: AbortSignal;
  /** Told of every change of the job, in order. */
  readonly onState?: (progress: JobProgress) => void;
  /** Milliseconds between two questions after the job; 1000 where it is absent. */
  readonly pollMs?: number;
  /**
   * Milliseconds that a person has to put right what stops the printer (stock, cover, pause); 120,000 where it is absent.
   * After that the job is taken back, so that no tag comes out unwatched, and the outcome is what stopped it.
   */
  readonly patienceMs?: number;
}

/** Neither method throws for what a printer, a network or a folder does: that is a value. */
export interface Destination {
  check(): Promise<PrinterState>;
  print(job: PrintJob, options?: PrintOptions): Promise<PrintOutcome>;
}

export const defaultPollMs = 1_000;
export const defaultPatienceMs = 120_000;
