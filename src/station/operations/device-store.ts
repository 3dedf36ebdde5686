/** `device.store`: gives a device its place in store. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { placeCodeSchema } from '../../domain/custody/place-code.ts';
import { decideStore } from '../../domain/decide/shelf-count.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const deviceStore = defineOperation({
  name: 'device.store',
  summary: 'Gives a device its place in store.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ benchId: benchIdSchema, place: placeCodeSchema }),
  output: z.object({}),
  run: async (context, { benchId, place }) => {
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      return isRefusal(row) ? row : decideStore(row.device, place);
    });
    return isRefusal(result) ? result : {};
  },
});
