/** `device.bind-code`: a further code (maker's barcode, RFID, old tag) that means this device from now on. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { yearOf } from '../../domain/calendar.ts';
import { decideBindCode } from '../../domain/decide/device.ts';
import { otherCodeSchema } from '../../domain/device.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { boundCode, codeMeaning, contradiction } from '../bound-code.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const deviceBindCode = defineOperation({
  name: 'device.bind-code',
  summary: 'Binds a further code to a device.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ benchId: benchIdSchema, otherCode: otherCodeSchema }),
  output: z.object({}),
  run: async (context, { benchId, otherCode }) => {
    const bound = boundCode(otherCode, yearOf(context.now()), 'otherCode');
    if (isRefusal(bound)) return bound;
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const { device, modelSheet } = row;
      return (
        contradiction(bound, device.serial, modelSheet, 'otherCode') ??
        decideBindCode(device, bound.otherCode, await codeMeaning(reader, bound))
      );
    });
    return isRefusal(result) ? result : {};
  },
});
