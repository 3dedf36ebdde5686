/** `schedule.plan`: the plan of the bench for a year, in numbers. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { planView, planViewSchema } from '../schedule/plan-view.ts';

export const schedulePlan = defineOperation({
  name: 'schedule.plan',
  summary:
    'The plan of the bench for a year: whether it keeps every due date, what is missing, and week by week.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: planViewSchema,
  run: async (context) => {
    const plan = await context.planner.plan(context);
    return isRefusal(plan) ? plan : planView(plan);
  },
});
