/** `device.remove`: takes a device out of service at once, on one of the program's grounds. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideRemove } from '../../domain/decide/device.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { foundSoFar } from '../found-so-far.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { record } from '../record.ts';

export const deviceRemove = defineOperation({
  name: 'device.remove',
  summary: 'Takes a device out of service at once.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    benchId: benchIdSchema,
    /** A key of the program's removal grounds. */
    ground: z.string(),
    note: z.string().trim().max(200).optional(),
  }),
  output: z.object({}),
  run: async (context, { benchId, ground, note }) => {
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const found = await foundSoFar(reader, row.device.openInspection, context.rules);
      if (isRefusal(found)) return found;
      return decideRemove(row.device, await programIn(reader, context.rules), ground, note, found);
    });
    return isRefusal(result) ? result : {};
  },
});
