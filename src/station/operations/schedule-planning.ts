/** `schedule.planning`: how far the plan of the bench is that is being made. */
import { z } from 'zod';
import { defineOperation, everyRole } from '../operation.ts';
import { workingSchema } from '../work-status.ts';

export const schedulePlanning = defineOperation({
  name: 'schedule.planning',
  summary: 'How far the plan of the bench is that is being made.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.discriminatedUnion('state', [
    /** Steps of making it. */
    workingSchema,
    z.object({ state: z.literal('idle') }),
  ]),
  run: async ({ planner: { underWay } }) =>
    underWay === undefined ? { state: 'idle' as const } : { state: 'working' as const, ...underWay },
});
