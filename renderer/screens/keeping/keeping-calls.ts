/** The calls of a backup and of opening one, and what the station answers. */
import type { InputOf, OutputOf } from '../../../src/station/contract.ts';
import { call } from '../../station/client.ts';
import type { WorkCalls } from '../../station/use-work.ts';

export type BackupStatus = OutputOf<'backup.status'>;
export type RestoreStatus = OutputOf<'restore.status'>;
export type ReadyRestore = Extract<RestoreStatus, { state: 'ready' }>;

export const backupCalls: WorkCalls<InputOf<'backup.make'>, BackupStatus> = {
  isCommand: true,
  start: (input) => call('backup.make', input),
  status: (job) => call('backup.status', { job }),
  cancel: (job) => call('backup.cancel', { job }),
};

/** The number of the job is kept with its end: restoring asks for it. */
export const openCalls: WorkCalls<InputOf<'restore.open'>, RestoreStatus & { readonly job?: number }> = {
  isCommand: false,
  start: (input) => call('restore.open', input),
  status: async (job) => {
    const answer = await call('restore.status', { job });
    return answer.ok ? { ok: true, output: { ...answer.output, job } } : answer;
  },
  cancel: (job) => call('restore.cancel', { job }),
};
