/** `count.finish`: ends the count of a place, and records what was found, is missing, lies wrong, and is unknown. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { countResultSchema } from '../../domain/custody/shelf-count.ts';
import { decideCount } from '../../domain/decide/shelf-count.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { countInputSchema, devicesOfPlace, scannedDevices } from '../count-input.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const countFinish = defineOperation({
  name: 'count.finish',
  summary: 'Ends the count of a place and records it.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: countInputSchema.extend({
    /** Devices of another place whose place is this one from now on. */
    keepHere: z.array(benchIdSchema).max(2000).default([]),
  }),
  output: z.object({ result: countResultSchema }),
  run: async (context, { place, scanned, unknown, keepHere }) => {
    const recorded = await record(context, async (reader) => {
      const lying = await scannedDevices(reader, { scanned });
      if (isRefusal(lying)) return lying;
      return decideCount(
        { place, scanned: lying, unknown, keepHere },
        await devicesOfPlace(reader, place),
        (await reader.station())?.kits ?? [],
      );
    });
    if (isRefusal(recorded)) return recorded;
    const [first] = recorded;
    return { result: countResultSchema.parse(first?.event) };
  },
});
