/** `count.preview`: how a count of a place stands; nothing is recorded. */
import { z } from 'zod';
import { countOf, countResultSchema } from '../../domain/custody/shelf-count.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { countInputSchema, devicesOfPlace, scannedDevices } from '../count-input.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { type DeviceSummary, deviceSummary, deviceSummarySchema } from '../views.ts';

export const countPreview = defineOperation({
  name: 'count.preview',
  summary: 'How a count of a place stands.',
  kind: 'query',
  access: everyRole,
  input: countInputSchema,
  /** `devices` are all that the result names. */
  output: z.object({ result: countResultSchema, devices: z.array(deviceSummarySchema) }),
  run: (context, { place, scanned, unknown }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const lying = await scannedDevices(reader, { scanned });
      if (isRefusal(lying)) return lying;
      const result = countOf(place, await devicesOfPlace(reader, place), lying, unknown);
      const { dueSoonDays } = await programIn(reader, context.rules);
      const devices: DeviceSummary[] = [];
      for (const benchId of new Set([...scanned, ...result.missing])) {
        const row = await reader.device(benchId);
        if (row !== undefined) devices.push(deviceSummary(row, context.occasion(station).on, dueSoonDays));
      }
      return { result, devices };
    }),
});
