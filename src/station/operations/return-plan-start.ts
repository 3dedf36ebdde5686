/** `return-plan.start`: what to send together and when, what to replace, what to scrap, for the record or for what is given; nothing is recorded. */
import { z } from 'zod';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { returnPlanInputSchema } from '../../planning/returns/plan-input.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { returnsNow } from '../returns/returns-now.ts';

export const returnPlanStart = defineOperation({
  name: 'return-plan.start',
  summary: 'Makes the cheapest plan of repairs, replacements and scrap for held devices.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    /** What the plan is made for; where it is absent, the record as it is now. */
    input: returnPlanInputSchema.optional(),
    /** Devices of which it is asked up to which price their repair is worth it: bench IDs, where it is from the record. */
    limitsOf: z.array(z.string()).max(20).default([]),
  }),
  /** Ask `return-plan.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, { input: given, limitsOf }) => {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const from = context.occasion(station).on;
    return {
      job: context.returnPlanJobs.start(async ({ signal, onProgress }) => {
        const now = given === undefined ? await returnsNow(context) : undefined;
        if (isRefusal(now)) return now;
        const input = given ?? now?.recorded.input;
        if (input === undefined) throw new Error('A plan is for what is given or for the record.');
        const { planInThread } = await import('../../planning/returns/plan-in-thread.ts');
        try {
          const order = { input, limitsOf, whatCanBe: now !== undefined };
          const answer = await planInThread(order, { signal, onProgress });
          return {
            answer,
            input,
            from,
            unit: now === undefined ? ('m' as const) : station.lengthUnit,
            recorded: now?.recorded,
            recordSize: now?.size,
          };
        } catch (error) {
          if (signal.aborted) return refusal('return-plan-canceled');
          throw error;
        }
      }),
    };
  },
});
