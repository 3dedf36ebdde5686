/** A label printer as a print destination: the dots of the job as graphics, over the network or through a raw queue. */
import { isRefusal, type Refusal, type RefusalCode, refusal } from '../../domain/refusal.ts';
import {
  type Destination,
  defaultPatienceMs,
  type PrinterCondition,
  type PrinterState,
  type PrintJob,
  type PrintOptions,
  type PrintOutcome,
} from '../destination.ts';
import type { ThermalSettings } from '../destination-settings.ts';
import { followJob, type JobLook } from '../follow-job.ts';
import { misfitOf } from '../job-fit.ts';
import { CupsQueue } from '../queue/cups-queue.ts';
import { withTemporaryFile } from '../queue/temporary-file.ts';
import { rasterOf, toBitmap } from '../raster.ts';
import { problemOf } from '../state-reasons.ts';
import type { HostStatus } from './host-status.ts';
import { LabelConnection, statusMs } from './label-connection.ts';
import { cancelAll, labelOf } from './label-language.ts';

export interface ThermalTiming {
  /** Milliseconds within which a printer says how it is; 2,000 where it is absent. */
  readonly statusMs?: number;
}

export class ThermalDestination implements Destination {
  readonly #settings: ThermalSettings;
  readonly #statusMs: number;
  readonly #platform: NodeJS.Platform;

  constructor(settings: ThermalSettings, timing: ThermalTiming = {}, platform = process.platform) {
    this.#settings = settings;
    this.#statusMs = timing.statusMs ?? statusMs;
    this.#platform = platform;
  }

  async check(): Promise<PrinterState> {
    const { connection } = this.#settings;
    if (connection.by === 'queue') {
      return this.#platform === 'win32'
        ? { condition: 'unknown', reasons: [], problem: this.#refusal('printer-raw-queue-unsupported') }
        : new CupsQueue(this.#settings, connection.queue).check();
    }
    const opened = await this.#open(connection);
    if (isRefusal(opened)) return { condition: 'unknown', reasons: [], problem: opened };
    try {
      const status = await opened.status(this.#statusMs);
      if (status === undefined) return { condition: 'unknown', reasons: [] };
      const problem = this.#problem(status);
      return {
        condition: conditionOf(status),
        reasons: status.reasons,
        ...(problem === undefined ? {} : { problem }),
      };
    } finally {
      opened.close();
    }
  }

  async print(job: PrintJob, options: PrintOptions = {}): Promise<PrintOutcome> {
    const misfit = misfitOf(job, this.#settings);
    if (misfit !== undefined) return misfit;
    const raster = await rasterOf(job, this.#settings, false);
    if (isRefusal(raster)) return raster;
    const { compression, darkness, speedInchesPerSecond, connection } = this.#settings;
    const label = labelOf(toBitmap(raster), {
      compression,
      darkness,
      speedInchesPerSecond,
      copies: job.copies,
    });
    return connection.by === 'network'
      ? this.#printByNetwork(label, connection, options)
      : this.#printByQueue(label, job, connection.queue, options);
  }

  async #printByNetwork(
    label: string,
    address: NetworkAddress,
    options: PrintOptions,
  ): Promise<PrintOutcome> {
    const opened = await this.#open(address);
    if (isRefusal(opened)) return opened;
    const canceled = () => options.signal?.aborted === true;
    try {
      const before = await opened.status(this.#statusMs);
      const problem = before === undefined ? undefined : this.#problem(before);
      if (problem !== undefined) return problem;
      if (canceled()) return this.#refusal('printer-job-canceled');
      if (!(await opened.send(label, options.patienceMs ?? defaultPatienceMs, options.signal))) {
        return this.#refusal(canceled() ? 'printer-job-canceled' : 'printer-went-away');
      }
      if (before === undefined) {
        options.onState?.({ state: 'processing' });
        return { printed: true, format: 'label graphics', confirmed: false };
      }
      const failed = await this.#follow(opened, options);
      return failed ?? { printed: true, format: 'label graphics', confirmed: true };
    } finally {
      opened.close();
    }
  }

  #follow(opened: LabelConnection, options: PrintOptions): Promise<Refusal | undefined> {
    const look = async (): Promise<JobLook | Refusal> => {
      const status = await opened.status(this.#statusMs);
      if (status === undefined) return this.#refusal('printer-went-away');
      const problem = this.#problem(status);
      if (problem !== undefined) return { state: 'processing-stopped', problem };
      return { state: conditionOf(status) === 'idle' ? 'completed' : 'processing' };
    };
    const cancel = async () => {
      await opened.send(cancelAll, this.#statusMs);
    };
    return followJob({ printer: this.#settings.name, look, cancel }, options);
  }

  async #printByQueue(
    label: string,
    job: PrintJob,
    queue: string,
    options: PrintOptions,
  ): Promise<PrintOutcome> {
    if (this.#platform === 'win32') return this.#refusal('printer-raw-queue-unsupported');
    const printed = await withTemporaryFile('job.label', Buffer.from(label, 'latin1'), (path) =>
      new CupsQueue(this.#settings, queue).print(path, job.title, 1, ['raw'], options),
    );
    if (isRefusal(printed)) return printed;
    return { printed: true, format: 'label graphics', confirmed: true, jobId: printed.jobId };
  }

  async #open({ host, port }: NetworkAddress): Promise<LabelConnection | Refusal> {
    return (
      (await LabelConnection.open(host, port)) ??
      this.#refusal('printer-unreachable', { address: `${host}:${port}` })
    );
  }

  #problem(status: HostStatus): Refusal | undefined {
    return problemOf(conditionOf(status), status.reasons, this.#settings);
  }

  #refusal(code: RefusalCode, values: Refusal['values'] = {}): Refusal {
    return refusal(code, { printer: this.#settings.name, ...values });
  }
}

type NetworkAddress = Extract<ThermalSettings['connection'], { by: 'network' }>;

const conditionOf = (status: HostStatus): PrinterCondition => {
  if (status.reasons.length > 0) return 'stopped';
  const working = status.formatsInBuffer > 0 || status.labelsRemaining > 0 || status.partialFormat;
  return working ? 'processing' : 'idle';
};
