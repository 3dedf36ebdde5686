/** `health.cancel`: ends a look over the station. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const healthCancel = defineOperation({
  name: 'health.cancel',
  summary: 'Ends a look over the station.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ healthJobs }, { job }) =>
    healthJobs.cancel(job) ? {} : refusal('health-job-not-known', { job }, 'job'),
});
