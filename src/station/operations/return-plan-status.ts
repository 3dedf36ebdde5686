/** `return-plan.status`: how far a return plan is, and the plan once it is made. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { returnPlanSchema, returnPlanView } from '../returns/plan-view.ts';
import { ReturnsText } from '../returns/returns-text.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const returnPlanStatus = defineOperation({
  name: 'return-plan.status',
  summary: 'How far a return plan is, and the plan once it is made.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Steps. */
    workingSchema,
    z.object({
      state: z.literal('planned'),
      plan: returnPlanSchema,
      /** False where it was made from the record, and something was recorded since. */
      isCurrent: z.boolean(),
    }),
    refusedSchema,
  ]),
  run: async ({ returnPlanJobs, language, ledger }, { job }) => {
    const size = await ledger.read((reader) => reader.size());
    return workStatus(returnPlanJobs, job, language, 'return-plan-job-not-known', (planned) => {
      const { from, unit, input, recordSize = size } = planned;
      const text = new ReturnsText({ language, from, unit, currency: input.currency });
      return {
        state: 'planned' as const,
        plan: returnPlanView(planned, text),
        isCurrent: recordSize === size,
      };
    });
  },
});
