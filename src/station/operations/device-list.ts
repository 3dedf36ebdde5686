/** `device.list`: a page of the register, searched and filtered. */
import { z } from 'zod';
import { addDays } from '../../domain/calendar.ts';
import { standingSchema } from '../../domain/device.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { deviceSummary, deviceSummarySchema } from '../views.ts';

export const deviceList = defineOperation({
  name: 'device.list',
  summary: 'A page of the register, searched and filtered.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    /** Words that must all occur in bench ID, maker, model, serial number or an other code. */
    search: z.string().trim().max(200).optional(),
    standing: z.array(standingSchema).optional(),
    due: z.enum(['overdue', 'due soon']).optional(),
    /** Only devices whose tag nobody has scanned on them yet. */
    unprovedTag: z.boolean().optional(),
    limit: z.number().int().min(1).max(500).default(100),
    offset: z.number().int().min(0).default(0),
  }),
  output: z.object({ devices: z.array(deviceSummarySchema), total: z.number().int() }),
  run: (context, { search, standing, due, unprovedTag, limit, offset }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const { dueSoonDays } = context.rules.program;
      const dueBefore =
        due === 'overdue' ? today : due === 'due soon' ? addDays(today, dueSoonDays + 1) : undefined;
      const { rows, total } = await reader.devices({
        search,
        standing,
        dueBefore,
        unprovedTag,
        limit,
        offset,
      });
      return { devices: rows.map((row) => deviceSummary(row, today, dueSoonDays)), total };
    }),
});
