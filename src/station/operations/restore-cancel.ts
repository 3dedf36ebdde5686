/** `restore.cancel`: stops opening a backup; nothing was changed. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const restoreCancel = defineOperation({
  name: 'restore.cancel',
  summary: 'Stops opening a backup; nothing was changed.',
  kind: 'command',
  access: 'anyone',
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ keeper }, { job }) =>
    keeper.restores.cancel(job) ? {} : refusal('restore-job-not-known', { job }, 'job'),
});
