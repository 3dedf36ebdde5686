/** `schedule.due`: how much comes due in each week or month, whenever the bench does it. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { workload } from '../../planning/workload.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const scheduleDue = defineOperation({
  name: 'schedule.due',
  summary: 'How much comes due in each week or month, whenever the bench does it.',
  kind: 'query',
  access: everyRole,
  input: z.object({ by: z.enum(['week', 'month']).default('week') }),
  output: z.object({
    today: calendarDateSchema,
    overdue: z.int(),
    neverInspected: z.int(),
    /** One after the other without a gap; a week is from Monday to Sunday. */
    periods: z.array(z.object({ from: calendarDateSchema, until: calendarDateSchema, due: z.int() })),
  }),
  run: (context, { by }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const devices = await reader.devicesToPlan();
      const dates = devices.flatMap(({ dueOn }) => (dueOn === undefined ? [] : [dueOn]));
      const { overdue, periods } = workload(dates, today, by);
      return { today, overdue, neverInspected: devices.length - dates.length, periods: [...periods] };
    }),
});
