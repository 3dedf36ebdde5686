/** Follows a job to its end: tells of every change, waits for a person where the printer stopped, takes it back on request. */
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import {
  defaultPatienceMs,
  defaultPollMs,
  type JobProgress,
  type JobState,
  type PrintOptions,
} from './destination.ts';
import { pause } from './pause.ts';

/** One look at the job. `ended` with a refusal where it came to a bad end. */
export interface JobLook {
  readonly state: JobState;
  /** What stops it now. */
  readonly problem?: Refusal;
  /** Why it ended without a print. */
  readonly failure?: Refusal;
}

export interface FollowedJob {
  readonly printer: string;
  readonly jobId?: string;
  /** A refusal where the printer cannot be asked. */
  look(): Promise<JobLook | Refusal>;
  /** Takes the job back; whether the printer did so is not known. */
  cancel(): Promise<void>;
}

/** Looks that may fail one after the other before the printer counts as gone: a network drops one now and then. */
const failedLooks = 3;

const ended: ReadonlySet<JobState> = new Set(['canceled', 'aborted', 'completed']);

/** Undefined where the job was completed; else why it was not. */
export const followJob = async (job: FollowedJob, options: PrintOptions): Promise<Refusal | undefined> => {
  const pollMs = options.pollMs ?? defaultPollMs;
  const looksOfPatience = Math.ceil((options.patienceMs ?? defaultPatienceMs) / Math.max(1, pollMs));
  const tell = teller(job, options.onState);
  let missed = 0;
  let stopped = 0;
  for (;;) {
    if (options.signal?.aborted === true) {
      await job.cancel();
      tell({ state: 'canceled' });
      return refusal('printer-job-canceled', { printer: job.printer });
    }
    const look = await job.look();
    if (isRefusal(look)) {
      missed += 1;
      if (missed >= failedLooks) return refusal('printer-went-away', { printer: job.printer });
    } else {
      missed = 0;
      tell(look);
      if (ended.has(look.state)) return look.state === 'completed' ? look.failure : badEnd(job, look);
      stopped = look.problem === undefined ? 0 : stopped + 1;
      if (look.problem !== undefined && stopped > looksOfPatience) {
        await job.cancel();
        tell({ state: 'canceled', problem: look.problem });
        return look.problem;
      }
    }
    await pause(pollMs, options.signal);
  }
};

const badEnd = (job: FollowedJob, look: JobLook): Refusal =>
  look.failure ??
  (look.state === 'canceled'
    ? refusal('printer-job-canceled-there', { printer: job.printer })
    : refusal('printer-job-failed', { printer: job.printer, reasons: look.state }));

const teller = (job: FollowedJob, onState: PrintOptions['onState']) => {
  let last = '';
  return (look: JobLook): void => {
    const progress: JobProgress = {
      state: look.state,
      ...(job.jobId === undefined ? {} : { jobId: job.jobId }),
      ...(look.problem === undefined ? {} : { problem: look.problem }),
    };
    const text = JSON.stringify(progress);
    if (text !== last) onState?.(progress);
    last = text;
  };
};
