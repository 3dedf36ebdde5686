/** `import.cancel`: ends a preview or an import that is not recorded yet; nothing of it stays. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const importCancel = defineOperation({
  name: 'import.cancel',
  summary: 'Ends a preview or an import that is not recorded yet.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ importJobs }, { job }) =>
    importJobs.cancel(job) ? {} : refusal('import-job-not-known', { job }, 'job'),
});
