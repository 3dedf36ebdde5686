/** `report.cancel`: ends a report; nothing of it stays. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const reportCancel = defineOperation({
  name: 'report.cancel',
  summary: 'Ends a report; nothing of it stays.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ reportJobs }, { job }) =>
    reportJobs.cancel(job) ? {} : refusal('report-job-not-known', { job }, 'job'),
});
