/** `custody.list`: the devices that are out: with whom, since when, and until when they were to be. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { outDevice, outDeviceSchema } from '../custody-view.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { namesOf } from '../views.ts';

export const custodyList = defineOperation({
  name: 'custody.list',
  summary: 'The devices that are out, with whom and since when.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    userId: z.string().optional(),
    /** Only those that were expected back before today. */
    overdue: z.boolean().default(false),
    limit: z.int().min(1).max(500).default(100),
    offset: z.int().min(0).default(0),
  }),
  output: z.object({ out: z.array(outDeviceSchema), total: z.int() }),
  run: (context, { userId, overdue, limit, offset }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const { rows, total } = await reader.devices({
        out: userId === undefined ? true : { userId },
        ...(overdue ? { returnBefore: today } : {}),
        limit,
        offset,
      });
      const name = await namesOf(reader);
      const { dueSoonDays } = await programIn(reader, context.rules);
      return { out: rows.map((row) => outDevice(row, today, dueSoonDays, name)), total };
    }),
});
