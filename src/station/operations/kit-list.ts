/** `kit.list`: the kits by name, with their devices. */
import { z } from 'zod';
import { kitSchema } from '../../domain/custody/kit.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { type DeviceSummary, deviceSummary, deviceSummarySchema } from '../views.ts';

export const kitList = defineOperation({
  name: 'kit.list',
  summary: 'The kits by name, with their devices.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    kits: z.array(kitSchema.omit({ benchIds: true }).extend({ devices: z.array(deviceSummarySchema) })),
  }),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const { dueSoonDays } = await programIn(reader, context.rules);
      const kits = [];
      for (const { benchIds, ...kit } of station.kits ?? []) {
        const devices: DeviceSummary[] = [];
        for (const benchId of benchIds) {
          const row = await reader.device(benchId);
          if (row !== undefined) devices.push(deviceSummary(row, today, dueSoonDays));
        }
        kits.push({ ...kit, devices });
      }
      return { kits };
    }),
});
