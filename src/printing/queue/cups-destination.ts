/** A queue of the operating system on macOS and Linux as a print destination: the document, on media of the size of the stock. */
import { isRefusal } from '../../domain/refusal.ts';
import type { Destination, PrinterState, PrintJob, PrintOptions, PrintOutcome } from '../destination.ts';
import type { QueueSettings } from '../destination-settings.ts';
import { misfitOf } from '../job-fit.ts';
import { pdfOf } from '../moved-pdf.ts';
import { CupsQueue } from './cups-queue.ts';
import { withTemporaryFile } from './temporary-file.ts';

export class CupsDestination implements Destination {
  readonly #settings: QueueSettings;
  readonly #queue: CupsQueue;

  constructor(settings: QueueSettings) {
    this.#settings = settings;
    this.#queue = new CupsQueue(settings, settings.queue);
  }

  check(): Promise<PrinterState> {
    return this.#queue.check();
  }

  async print(job: PrintJob, options: PrintOptions = {}): Promise<PrintOutcome> {
    const misfit = misfitOf(job, this.#settings);
    if (misfit !== undefined) return misfit;
    const pdf = await pdfOf(job, this.#settings);
    const printed = await withTemporaryFile('job.pdf', pdf, (path) =>
      this.#queue.print(path, job.title, job.copies, this.#jobOptions(), options),
    );
    if (isRefusal(printed)) return printed;
    return { printed: true, format: 'application/pdf', confirmed: true, jobId: printed.jobId };
  }

  /** `Custom.WIDTHxLENGTHmm` names any size (lp(1), "Specifying the media size"); nothing is scaled to it. */
  #jobOptions(): string[] {
    const { stock, colour } = this.#settings;
    return [
      `media=Custom.${stock.widthMm}x${stock.heightMm}mm`,
      'print-scaling=none',
      `print-color-mode=${colour === 'colour' ? 'color' : 'monochrome'}`,
    ];
  }
}
