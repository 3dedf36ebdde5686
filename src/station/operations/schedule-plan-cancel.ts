/** `schedule.plan-cancel`: ends the making of the plan, for everybody who waits for it. */
import { z } from 'zod';
import { defineOperation, everyRole } from '../operation.ts';

export const schedulePlanCancel = defineOperation({
  name: 'schedule.plan-cancel',
  summary: 'Ends the making of the plan of the bench.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({}),
  run: async ({ planner }) => {
    planner.cancel();
    return {};
  },
});
