/** `reinspection.draw`: draws devices at random, among those inspected lately, for a blind second inspection. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideDraw } from '../../domain/decide/reinspection.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { record } from '../record.ts';
import { drawableDevices } from '../reinspections/drawable-devices.ts';
import { reinspectionDays } from '../reinspections/reinspection-days.ts';

const bytesOfNumber = 4;

export const reinspectionDraw = defineOperation({
  name: 'reinspection.draw',
  summary: 'Draws devices at random for a blind second inspection by another inspector.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ count: z.int().min(1).max(50) }),
  output: z.object({ drawn: z.array(benchIdSchema) }),
  run: async (context, { count }) => {
    const random = new DataView(new Uint8Array(context.randomBytes(count * bytesOfNumber)).buffer);
    const numbers = Array.from({ length: count }, (_, index) => random.getUint32(index * bytesOfNumber));
    const result = await record(context, async (reader, { on }) => {
      const withinDays = reinspectionDays(await programIn(reader, context.rules));
      const next = await reader.nextCaseFileNumber('reinspection');
      const among = await drawableDevices(reader, withinDays, on);
      return decideDraw(among, { numbers, next, withinDays }, on);
    });
    if (isRefusal(result)) return result;
    return {
      drawn: result.flatMap(({ event }) => (event.type === 'reinspection.drawn' ? [event.benchId] : [])),
    };
  },
});
