/** `backup.cancel`: ends a backup; nothing of it stays. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const backupCancel = defineOperation({
  name: 'backup.cancel',
  summary: 'Ends a backup; nothing of it stays.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ keeper }, { job }) =>
    keeper.backups.cancel(job) ? {} : refusal('backup-job-not-known', { job }, 'job'),
});
