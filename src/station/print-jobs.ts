/** The print jobs of a running station: each can be looked at while it goes, and taken back. */
import type { Refusal } from '../domain/refusal.ts';
import type { JobProgress, Printed, PrintOutcome } from '../printing/destination.ts';

export type PrintJobState =
  | { readonly state: 'printing'; readonly progress?: JobProgress }
  | { readonly state: 'printed'; readonly printed: Printed }
  | { readonly state: 'refused'; readonly refusal: Refusal };

export type RunPrintJob = (options: {
  readonly signal: AbortSignal;
  readonly onState: (progress: JobProgress) => void;
}) => Promise<PrintOutcome>;

interface Job {
  state: PrintJobState;
  readonly controller: AbortController;
  readonly done: Promise<void>;
}

/** Ended jobs are remembered for whoever still asks after them. */
const remembered = 100;

export class PrintJobs {
  readonly #jobs = new Map<number, Job>();
  readonly #onFault: (error: unknown) => Refusal;
  #last = 0;

  /** `onFault` is told of a fault inside the program, and says what the person is told. */
  constructor(onFault: (error: unknown) => Refusal) {
    this.#onFault = onFault;
  }

  start(run: RunPrintJob): number {
    const number = ++this.#last;
    const controller = new AbortController();
    const onState = (progress: JobProgress): void => {
      const job = this.#jobs.get(number);
      if (job?.state.state === 'printing') job.state = { state: 'printing', progress };
    };
    const done = run({ signal: controller.signal, onState }).then(
      (outcome) =>
        this.#end(
          number,
          'refused' in outcome
            ? { state: 'refused', refusal: outcome }
            : { state: 'printed', printed: outcome },
        ),
      (error: unknown) => this.#end(number, { state: 'refused', refusal: this.#onFault(error) }),
    );
    this.#jobs.set(number, { state: { state: 'printing' }, controller, done });
    for (const old of this.#jobs.keys()) if (old <= number - remembered) this.#jobs.delete(old);
    return number;
  }

  stateOf(number: number): PrintJobState | undefined {
    return this.#jobs.get(number)?.state;
  }

  /** Asks for the job to be taken back; false where there is no such job. It ends when the printer has answered. */
  cancel(number: number): boolean {
    const job = this.#jobs.get(number);
    job?.controller.abort();
    return job !== undefined;
  }

  /** Takes back what still goes, and waits for all to end. */
  async close(): Promise<void> {
    const jobs = [...this.#jobs.values()];
    for (const { state, controller } of jobs) if (state.state === 'printing') controller.abort();
    await Promise.all(jobs.map(({ done }) => done));
  }

  #end(number: number, state: PrintJobState): void {
    const job = this.#jobs.get(number);
    if (job !== undefined) job.state = state;
  }
}
