/** A queue of Windows as a print destination, through pdf-to-printer, which carries the program that prints the document. */
import { type Refusal, refusal } from '../../domain/refusal.ts';
import type { Destination, PrinterState, PrintJob, PrintOptions, PrintOutcome } from '../destination.ts';
import type { QueueSettings } from '../destination-settings.ts';
import { misfitOf } from '../job-fit.ts';
import { pdfOf } from '../moved-pdf.ts';
import { withTemporaryFile } from './temporary-file.ts';

/** The part of pdf-to-printer that is used. */
export interface WindowsPrinting {
  getPrinters(): Promise<readonly { readonly deviceId: string; readonly name: string }[]>;
  print(
    path: string,
    options: {
      printer: string;
      copies: number;
      scale: 'noscale';
      monochrome: boolean;
      silent: boolean;
    },
  ): Promise<void>;
}

/** Loaded when it is first needed, for it exists on Windows alone. */
const loadPdfToPrinter = async (): Promise<WindowsPrinting> => import('pdf-to-printer');

/**
 * Windows takes the size of the media from the queue's own settings, and does not say what becomes of a job: it is handed
 * over, never confirmed.
 */
export class WindowsDestination implements Destination {
  readonly #settings: QueueSettings;
  readonly #load: () => Promise<WindowsPrinting>;

  constructor(settings: QueueSettings, load: () => Promise<WindowsPrinting> = loadPdfToPrinter) {
    this.#settings = settings;
    this.#load = load;
  }

  async check(): Promise<PrinterState> {
    const problem = await this.#refusalOfQueue();
    return { condition: 'unknown', reasons: [], ...(problem === undefined ? {} : { problem }) };
  }

  async print(job: PrintJob, { signal, onState }: PrintOptions = {}): Promise<PrintOutcome> {
    const { name, queue, colour } = this.#settings;
    const refused = misfitOf(job, this.#settings) ?? (await this.#refusalOfQueue());
    if (refused !== undefined) return refused;
    if (signal?.aborted === true) return refusal('printer-job-canceled', { printer: name });
    const pdf = await pdfOf(job, this.#settings);
    try {
      const { print } = await this.#load();
      await withTemporaryFile('job.pdf', pdf, (path) =>
        print(path, {
          printer: queue,
          copies: job.copies,
          scale: 'noscale',
          monochrome: colour === 'monochrome',
          silent: true,
        }),
      );
    } catch (error) {
      return this.#failed(error);
    }
    onState?.({ state: 'processing' });
    return { printed: true, format: 'application/pdf', confirmed: false };
  }

  async #refusalOfQueue(): Promise<Refusal | undefined> {
    const { name, queue } = this.#settings;
    try {
      const printers = await (await this.#load()).getPrinters();
      if (printers.some((printer) => printer.name === queue || printer.deviceId === queue)) return undefined;
      const known = printers.map((printer) => printer.name).join(', ');
      return refusal('printer-queue-unknown', { printer: name, queue, known: known === '' ? '–' : known });
    } catch (error) {
      return this.#failed(error);
    }
  }

  #failed(error: unknown): Refusal {
    const reasons = error instanceof Error ? error.message : String(error);
    return refusal('printer-queue-failed', { printer: this.#settings.name, reasons });
  }
}
