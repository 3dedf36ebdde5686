/** A queue of CUPS, the print system of macOS and Linux, through its own programs `lp`, `lpstat` and `cancel`. */
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { PrinterState, PrintOptions } from '../destination.ts';
import type { DestinationSettings } from '../destination-settings.ts';
import { followJob, type JobLook } from '../follow-job.ts';
import { problemOf, standstillOf } from '../state-reasons.ts';
import { askCups } from './cups-job.ts';
import {
  isAccepting,
  type QueuedJob,
  readEndedJob,
  readJobId,
  readPendingJob,
  readQueueNames,
  readQueueStatus,
  saysUnreachable,
} from './lpstat.ts';
import { runProgram } from './run-program.ts';

export class CupsQueue {
  readonly #settings: DestinationSettings;
  readonly #queue: string;

  constructor(settings: DestinationSettings, queue: string) {
    this.#settings = settings;
    this.#queue = queue;
  }

  async check(): Promise<PrinterState> {
    const status = await this.#status();
    if (isRefusal(status)) return { condition: 'unknown', reasons: [], problem: status };
    return status;
  }

  /** Sends a file and follows the job to its end; the number of the job, or why it brought no print. */
  async print(
    file: string,
    title: string,
    copies: number,
    jobOptions: readonly string[],
    options: PrintOptions,
  ): Promise<{ readonly jobId: string } | Refusal> {
    const status = await this.#status();
    if (isRefusal(status)) return status;
    if (status.condition === 'stopped' && status.problem !== undefined) return status.problem;
    if (status.problem?.code === 'printer-not-accepting') return status.problem;
    if (options.signal?.aborted === true) return this.#refusal('printer-job-canceled');
    const sent = await this.#run('lp', [
      '-d',
      this.#queue,
      '-t',
      title,
      '-n',
      String(copies),
      ...jobOptions.flatMap((option) => ['-o', option]),
      '--',
      file,
    ]);
    if (isRefusal(sent)) return sent;
    const jobId = readJobId(sent);
    if (jobId === undefined) return this.#refusal('printer-queue-failed', { reasons: sent.trim() });
    const failed = await followJob(
      {
        printer: this.#settings.name,
        jobId,
        look: () => this.#look(jobId),
        cancel: async () => {
          await runProgram('cancel', [jobId]);
        },
      },
      options,
    );
    return failed ?? { jobId };
  }

  async #status(): Promise<PrinterState | Refusal> {
    const said = await runProgram('lpstat', ['-l', '-p', this.#queue]);
    if (!said.ran) return this.#refusal('printer-queue-program-missing', { program: 'lpstat' });
    const status = readQueueStatus(said.output, this.#queue);
    if (status === undefined) return this.#unknownQueue();
    const accepting = await this.#run('lpstat', ['-a', this.#queue]);
    if (isRefusal(accepting)) return accepting;
    const { condition, reasons, description } = status;
    const problem = isAccepting(accepting, this.#queue)
      ? problemOf(condition, reasons, this.#settings, this.#queue)
      : refusal('printer-not-accepting', { printer: this.#settings.name });
    return {
      condition,
      reasons,
      ...(problem === undefined ? {} : { problem }),
      ...(description === undefined ? {} : { makeAndModel: description }),
    };
  }

  async #unknownQueue(): Promise<Refusal> {
    const scheduler = await runProgram('lpstat', ['-r']);
    if (scheduler.ran && scheduler.output.includes('not running')) {
      return this.#refusal('printer-queue-failed', { reasons: scheduler.output.trim() });
    }
    const listed = await runProgram('lpstat', ['-e']);
    const known = listed.ran ? readQueueNames(listed.output).join(', ') : '';
    return this.#refusal('printer-queue-unknown', { queue: this.#queue, known: known === '' ? '–' : known });
  }

  async #look(jobId: string): Promise<JobLook | Refusal> {
    const pending = await this.#run('lpstat', ['-l', '-W', 'not-completed', '-o', this.#queue]);
    if (isRefusal(pending)) return pending;
    const waiting = readPendingJob(pending, jobId);
    if (waiting !== undefined) {
      const status = await this.#status();
      const problem = isRefusal(status)
        ? undefined
        : (standstillOf(status, waiting.state, this.#settings, this.#queue) ?? this.#unreachable(waiting));
      return problem === undefined ? { state: waiting.state } : { state: waiting.state, problem };
    }
    const ended = (await askCups(this.#queue, jobId)) ?? (await this.#endedJob(jobId));
    if (isRefusal(ended)) return ended;
    if (ended.state !== 'aborted') return { state: ended.state };
    const reasons = ended.message ?? ended.reasons.join(', ');
    return { state: 'aborted', failure: this.#refusal('printer-job-failed', { reasons }) };
  }

  #unreachable({ message = '' }: QueuedJob): Refusal | undefined {
    return saysUnreachable(message)
      ? this.#refusal('printer-unreachable', { address: this.#queue })
      : undefined;
  }

  async #endedJob(jobId: string): Promise<QueuedJob | Refusal> {
    const completed = await this.#run('lpstat', ['-l', '-W', 'completed', '-o', this.#queue]);
    if (isRefusal(completed)) return completed;
    return readEndedJob(completed, jobId) ?? this.#refusal('printer-went-away');
  }

  async #run(program: string, args: readonly string[]): Promise<string | Refusal> {
    const result = await runProgram(program, args);
    if (!result.ran) return this.#refusal('printer-queue-program-missing', { program });
    if (result.exitCode === 0) return result.output;
    return this.#refusal('printer-queue-failed', { reasons: result.errors.trim() || program });
  }

  #refusal(code: Refusal['code'], values: Refusal['values'] = {}): Refusal {
    return refusal(code, { printer: this.#settings.name, ...values });
  }
}
