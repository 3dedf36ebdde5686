/** The look over the station as a long work. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { call } from '../../station/client.ts';
import type { WorkCalls } from '../../station/use-work.ts';

export type HealthStatus = OutputOf<'health.status'>;

export const healthCalls: WorkCalls<Record<string, never>, HealthStatus> = {
  isCommand: false,
  start: () => call('health.start', {}),
  status: (job) => call('health.status', { job }),
  cancel: (job) => call('health.cancel', { job }),
};
