/** `return-plan.cancel`: stops making a return plan. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const returnPlanCancel = defineOperation({
  name: 'return-plan.cancel',
  summary: 'Stops making a return plan.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ returnPlanJobs }, { job }) =>
    returnPlanJobs.cancel(job) ? {} : refusal('return-plan-job-not-known', { job }, 'job'),
});
