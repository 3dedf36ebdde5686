/** `export.cancel`: ends an export; nothing of it stays. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const exportCancel = defineOperation({
  name: 'export.cancel',
  summary: 'Ends an export; nothing of it stays.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ exportJobs }, { job }) =>
    exportJobs.cancel(job) ? {} : refusal('export-job-not-known', { job }, 'job'),
});
