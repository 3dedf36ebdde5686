/** `schedule.devices`: the devices that are planned in some days, or those for which there is no room. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { plannedDeviceSchema, plannedDevices } from '../schedule/planned-device.ts';

export const scheduleDevices = defineOperation({
  name: 'schedule.devices',
  summary: 'The devices that are planned in some days, or those for which the bench has no room.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    of: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('days'), from: calendarDateSchema, until: calendarDateSchema }),
      z.object({ kind: z.literal('without room') }),
    ]),
    limit: z.int().min(1).max(1000).default(200),
    offset: z.int().min(0).default(0),
  }),
  output: z.object({ devices: z.array(plannedDeviceSchema), total: z.int() }),
  run: async (context, { of, limit, offset }) => {
    if (of.kind === 'days' && of.until < of.from)
      return refusal('schedule-period-backwards', { from: of.from, until: of.until }, 'of.until');
    const found = await context.planner.plan(context);
    if (isRefusal(found)) return found;
    const { plan, today } = found;
    const inspections =
      of.kind === 'days' ? plan.planned.filter(({ on }) => of.from <= on && on <= of.until) : plan.unplanned;
    return context.ledger.read(async (reader) => {
      const { dueSoonDays } = await programIn(reader, context.rules);
      const page = inspections.slice(offset, offset + limit);
      const devices = await plannedDevices(reader, page, dueSoonDays, today);
      return isRefusal(devices) ? devices : { devices, total: inspections.length };
    });
  },
});
