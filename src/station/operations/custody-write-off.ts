/** `custody.write-off`: a device that was never returned is written off, and is out of service wherever it turns up. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideLost } from '../../domain/decide/custody.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { namesOf } from '../views.ts';

export const custodyWriteOff = defineOperation({
  name: 'custody.write-off',
  summary: 'Writes a device off that was never returned.',
  kind: 'command',
  access: ['attendant', 'administrator'],
  input: z.object({ benchId: benchIdSchema, because: whySchema }),
  output: z.object({}),
  run: async (context, { benchId, because }) => {
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const { device } = row;
      const holder = device.custody === undefined ? '' : (await namesOf(reader))(device.custody.userId);
      return decideLost(device, holder, because, context.rules.desk.lost);
    });
    return isRefusal(result) ? result : {};
  },
});
