/** `device.bind-code`: a further code (maker's barcode, RFID, old tag) that means this device from now on. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideBindCode } from '../../domain/decide/device.ts';
import { otherCodeSchema } from '../../domain/device.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { badgeMeaning, ownCodeMeaning } from '../badge.ts';
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
    const own = ownCodeMeaning(otherCode.code);
    if (own !== undefined)
      return refusal('code-is-ours', { code: otherCode.code, meaning: own }, 'otherCode');
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      return decideBindCode(row.device, otherCode, await badgeMeaning(reader, otherCode.code));
    });
    return isRefusal(result) ? result : {};
  },
});
