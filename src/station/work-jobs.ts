/** Long works of a running station, printing among them: each can be looked at while it goes, and canceled. */
import { isRefusal, type Refusal } from '../domain/refusal.ts';

/** How far a work is that is counted; `of` is 0 while it is not known yet. */
export interface WorkProgress {
  readonly done: number;
  readonly of: number;
}

export const notCountedYet: WorkProgress = { done: 0, of: 0 };

export type WorkState<Outcome, Progress> =
  | { readonly state: 'working'; readonly progress?: Progress }
  | { readonly state: 'done'; readonly outcome: Outcome }
  | { readonly state: 'refused'; readonly refusal: Refusal };

export interface WorkControl<Progress = WorkProgress> {
  readonly signal: AbortSignal;
  onProgress(progress: Progress): void;
}

interface Job<Outcome, Progress> {
  state: WorkState<Outcome, Progress>;
  readonly controller: AbortController;
  readonly ended: Promise<void>;
}

export class WorkJobs<Outcome extends object, Progress = WorkProgress> {
  readonly #jobs = new Map<number, Job<Outcome, Progress>>();
  readonly #remembered: number;
  readonly #onFault: (error: unknown) => Promise<Refusal>;
  readonly #onStart: (ended: Promise<void>) => void;
  #last = 0;

  /**
   * `remembered` ended works can still be asked after; what they brought can be large. `onFault` is told of an error, and
   * says what the person is told. `onStart` is told of every work, by what resolves when it has ended.
   */
  constructor(
    remembered: number,
    onFault: (error: unknown) => Promise<Refusal>,
    onStart: (ended: Promise<void>) => void = () => undefined,
  ) {
    this.#remembered = remembered;
    this.#onFault = onFault;
    this.#onStart = onStart;
  }

  start(work: (control: WorkControl<Progress>) => Promise<Outcome | Refusal>): number {
    const number = ++this.#last;
    const controller = new AbortController();
    const onProgress = (progress: Progress): void => {
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
    this.#jobs.set(number, { state: { state: 'working' }, controller, ended });
    this.#onStart(ended);
    for (const [old, { state }] of this.#jobs)
      if (old <= number - this.#remembered && state.state !== 'working') this.#jobs.delete(old);
    return number;
  }

  /** True while any work goes on. */
  get isWorking(): boolean {
    return [...this.#jobs.values()].some(({ state }) => state.state === 'working');
  }

  stateOf(number: number): WorkState<Outcome, Progress> | undefined {
    return this.#jobs.get(number)?.state;
  }

  /** Resolves when the work of that number has ended, however it ends. */
  async ended(number: number): Promise<void> {
    await this.#jobs.get(number)?.ended;
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
