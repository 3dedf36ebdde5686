/** `device.list`: a page of the register, searched and filtered. */
import { z } from 'zod';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceFilterSchema, deviceQueryOf } from '../device-filter.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { deviceSummary, deviceSummarySchema } from '../views.ts';

export const deviceList = defineOperation({
  name: 'device.list',
  summary: 'A page of the register, searched and filtered.',
  kind: 'query',
  access: everyRole,
  input: deviceFilterSchema.extend({
    limit: z.int().min(1).max(500).default(100),
    offset: z.int().min(0).default(0),
  }),
  output: z.object({ devices: z.array(deviceSummarySchema), total: z.int() }),
  run: (context, { limit, offset, ...filter }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const { dueSoonDays } = programInForce(station, context.rules.shipped).program;
      const query = deviceQueryOf(filter, today, dueSoonDays);
      const { rows, total } = await reader.devices({ ...query, limit, offset });
      return { devices: rows.map((row) => deviceSummary(row, today, dueSoonDays)), total };
    }),
});
