/** `return-plan.start`: what to send together and when, what to replace, what to scrap, for what is given; nothing is recorded. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { returnPlanInputSchema } from '../../planning/returns/plan-input.ts';
import { defineOperation } from '../operation.ts';

export const returnPlanStart = defineOperation({
  name: 'return-plan.start',
  summary: 'Makes the cheapest plan of repairs, replacements and scrap for held devices.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    input: returnPlanInputSchema,
    /** Devices of which it is asked up to which price their repair is worth it. */
    limitsOf: z.array(z.string()).max(20).default([]),
  }),
  /** Ask `return-plan.status` until the job has ended. */
  output: z.object({ job: z.number().int().positive() }),
  run: async (context, order) => ({
    job: context.returnPlanJobs.start(async ({ signal, onProgress }) => {
      const { planInThread } = await import('../../planning/returns/plan-in-thread.ts');
      try {
        const answer = await planInThread(order, { signal, onProgress });
        return { answer, input: order.input };
      } catch (error) {
        if (signal.aborted) return refusal('return-plan-canceled');
        throw error;
      }
    }),
  }),
});
