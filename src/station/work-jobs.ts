/** Long works of a running station: each can be looked at while it goes, and canceled. */
import { isRefusal, type Refusal } from '../domain/refusal.ts';

export interface WorkProgress {
  readonly done: number;
  /** 0 while it is not known yet. */
  readonly of: number;
}

export type WorkState<Outcome> =
  | { readonly state: 'working'; readonly progress: WorkProgress }
  | { readonly state: 'done'; readonly outcome: Outcome }
  | { readonly state: 'refused'; readonly refusal: Refusal };

export interface WorkControl {
  readonly signal: AbortSignal;
  onProgress(progress: WorkProgress): void;
}

interface Job<Outcome> {
  state: WorkState<Outcome>;
  readonly controller: AbortController;
  readonly ended: Promise<void>;
}

/** Ended works are remembered for whoever still asks after them; what they brought can be large. */
const remembered = 5;

export class WorkJobs<Outcome extends object> {
  readonly #jobs = new Map<number, Job<Outcome>>();
  readonly #onFault: (error: unknown) => Promise<Refusal>;
  #last = 0;

  /** `onFault` is told of an error, and says what the person is told. */
  constructor(onFault: (error: unknown) => Promise<Refusal>) {
    this.#onFault = onFault;
  }

  start(work: (control: WorkControl) => Promise<Outcome | Refusal>): number {
    const number = ++this.#last;
    const controller = new AbortController();
    const onProgress = (progress: WorkProgress): void => {
      const job = this.#jobs.get(number);
      if (job?.state.state === 'working') job.state = { state: 'working', progress };
    };
    const ended = work({ signal: controller.signal, onProgress })
      .catch((error: unknown) => this.#onFault(error))
      .then((outcome) => {
        const job = this.#jobs.get(number);
        if (job === undefined) return;
        job.state = isRefusal(outcome) ? { state: 'refused', refusal: outcome } : { state: 'done', outcome };
      });
    const progress = { done: 0, of: 0 };
    this.#jobs.set(number, { state: { state: 'working', progress }, controller, ended });
    for (const [old, { state }] of this.#jobs)
      if (old <= number - remembered && state.state !== 'working') this.#jobs.delete(old);
    return number;
  }

  stateOf(number: number): WorkState<Outcome> | undefined {
    return this.#jobs.get(number)?.state;
  }

  /** Asks for the work to end; false where there is none of that number. What cannot be undone any more ends as done. */
  cancel(number: number): boolean {
    const job = this.#jobs.get(number);
    job?.controller.abort();
    return job !== undefined;
  }

  /** Cancels what still goes, and waits for all to end. */
  async close(): Promise<void> {
    const jobs = [...this.#jobs.values()];
    for (const { state, controller } of jobs) if (state.state === 'working') controller.abort();
    await Promise.all(jobs.map(({ ended }) => ended));
  }
}
