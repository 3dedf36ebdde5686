/** What `lpstat` of CUPS prints, read (lpstat(1), CUPS 2.4; the words are those of the locale C). */
import type { JobState, PrinterCondition } from '../destination.ts';

export interface QueueStatus {
  readonly condition: PrinterCondition;
  /** `printer-state-reasons`. */
  readonly reasons: readonly string[];
  readonly description?: string;
}

/** Of `lpstat -l -p NAME`; undefined where the queue is not in it. */
export const readQueueStatus = (output: string, queue: string): QueueStatus | undefined => {
  const lines = output.split('\n');
  const at = lines.findIndex((line) => line.startsWith(`printer ${queue} `));
  const head = lines[at];
  if (head === undefined) return undefined;
  const details = detailsAfter(lines, at);
  const alerts = detail(details, 'Alerts');
  const description = detail(details, 'Description');
  return {
    condition: conditionOf(head.slice(`printer ${queue} `.length)),
    reasons: (alerts ?? '').split(/[\s,]+/).filter((word) => word !== '' && word !== 'none'),
    ...(description === undefined || description === '' ? {} : { description }),
  };
};

const conditionOf = (words: string): PrinterCondition => {
  if (words.startsWith('is idle')) return 'idle';
  if (words.startsWith('now printing')) return 'processing';
  return words.startsWith('disabled') ? 'stopped' : 'unknown';
};

/** Of `lpstat -a NAME`. */
export const isAccepting = (output: string, queue: string): boolean =>
  !output.split('\n').some((line) => line.startsWith(`${queue} not accepting requests`));

/** Names in `lpstat -e`, one a line. */
export const readQueueNames = (output: string): string[] =>
  output
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** Of `lp`: `request id is NAME-12 (1 file(s))`. */
export const readJobId = (output: string): string | undefined => /request id is (\S+)/.exec(output)?.[1];

export interface QueuedJob {
  readonly state: JobState;
  /** `job-state-reasons`. */
  readonly reasons: readonly string[];
  readonly message?: string;
}

/** Of `lpstat -l -W not-completed -o NAME`; undefined where the job is not in it. */
export const readPendingJob = (output: string, jobId: string): QueuedJob | undefined => {
  const job = readJob(output, jobId);
  if (job === undefined) return undefined;
  const { reasons } = job;
  const has = (word: string) => reasons.some((reason) => reason.startsWith(word));
  const state: JobState = has('job-printing')
    ? 'processing'
    : has('printer-stopped') || has('processing-to-stop-point')
      ? 'processing-stopped'
      : has('job-hold') || has('job-held')
        ? 'pending-held'
        : 'pending';
  return { ...job, state };
};

/** Of `lpstat -l -W completed -o NAME`, which lists aborted and canceled jobs too; undefined where the job is not in it. */
export const readEndedJob = (output: string, jobId: string): QueuedJob | undefined => {
  const job = readJob(output, jobId);
  if (job === undefined) return undefined;
  const has = (word: string) => job.reasons.some((reason) => reason.startsWith(word));
  const state: JobState = has('job-canceled')
    ? 'canceled'
    : has('aborted-by-system') || has('job-aborted')
      ? 'aborted'
      : 'completed';
  return { ...job, state };
};

/** What the backends of CUPS say while they cannot reach the printer (CUPS 2.4, backend/network.c, backend/socket.c, backend/ipp.c). */
export const saysUnreachable = (message: string): boolean =>
  /may not exist|unavailable|unreachable|not responding|unable to locate printer|waiting for printer to become available/i.test(
    message,
  );

const readJob = (output: string, jobId: string): Omit<QueuedJob, 'state'> | undefined => {
  const lines = output.split('\n');
  const at = lines.findIndex((line) => line.startsWith(`${jobId} `));
  if (at < 0) return undefined;
  const details = detailsAfter(lines, at);
  const message = detail(details, 'Status');
  return {
    reasons: (detail(details, 'Alerts') ?? '')
      .split(/[\s,]+/)
      .filter((word) => word !== '' && word !== 'none'),
    ...(message === undefined || message === '' ? {} : { message }),
  };
};

/** Details stand indented under their head. */
const detailsAfter = (lines: readonly string[], at: number): string[] => {
  const rest = lines.slice(at + 1);
  const end = rest.findIndex((line) => !/^\s/.test(line));
  return (end < 0 ? rest : rest.slice(0, end)).map((line) => line.trim());
};

const detail = (details: readonly string[], name: string): string | undefined =>
  details
    .find((line) => line.startsWith(`${name}:`))
    ?.slice(name.length + 1)
    .trim();
