/** `return-plan.status`: how far a return plan is, and the plan once it is made. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { returnPlanSchema } from '../returns/plan-view.ts';
import { planSentences } from '../returns/plan-words.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const returnPlanStatus = defineOperation({
  name: 'return-plan.status',
  summary: 'How far a return plan is, and the plan once it is made.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ job: z.number().int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Steps. */
    workingSchema,
    z.object({ state: z.literal('planned'), plan: returnPlanSchema }),
    refusedSchema,
  ]),
  run: async (context, { job }) => {
    const { returnPlanJobs, language } = context;
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const from = context.occasion(station).on;
    return workStatus(returnPlanJobs, job, language, 'return-plan-job-not-known', ({ answer, input }) => {
      const { plan, limits } = answer;
      const sentences = [...planSentences(answer, { language, from, input })];
      const given = limits.map(({ id, limit }) => ({ id, ...(limit === undefined ? {} : { limit }) }));
      if (plan.kind === 'no plan')
        return {
          state: 'planned' as const,
          plan: { found: false, choices: [], shipments: [], limits: given, sentences },
        };
      const { total, charged, within, oneByOne, replaceAll, choices, shipments } = plan;
      return {
        state: 'planned' as const,
        plan: {
          found: true,
          total,
          charged,
          within,
          ...(oneByOne === undefined ? {} : { oneByOne }),
          ...(replaceAll === undefined ? {} : { replaceAll }),
          choices: [...choices],
          shipments: shipments.map((each) => ({ ...each, ids: [...each.ids] })),
          limits: given,
          sentences,
        },
      };
    });
  },
});
