/** The registered numbers of `job-state`. */
import type { JobState } from '../destination.ts';

/** Source: RFC 8011 §5.3.7. */
const jobStates: Readonly<Record<number, JobState>> = {
  3: 'pending',
  4: 'pending-held',
  5: 'processing',
  6: 'processing-stopped',
  7: 'canceled',
  8: 'aborted',
  9: 'completed',
};

export const jobStateOf = (number: number | undefined): JobState | undefined => jobStates[number ?? 0];
