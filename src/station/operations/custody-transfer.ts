/** `custody.transfer`: a device passes from one user to another at the desk. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { decideTransfer } from '../../domain/decide/custody.ts';
import { languageSchema } from '../../domain/message.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn, personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const custodyTransfer = defineOperation({
  name: 'custody.transfer',
  summary: 'Records that a device passes from one user to another.',
  kind: 'command',
  access: ['attendant', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    toUserId: z.string(),
    /** Whose badge was scanned as the one who hands it over. */
    handedOverBy: z.string().optional(),
    /** Needed where that is not the one who has it by the record. */
    because: whySchema.optional(),
    expectedOn: calendarDateSchema.optional(),
    preUse: z.object({ language: languageSchema }).optional(),
  }),
  output: z.object({}),
  run: async (context, { benchId, toUserId, preUse, ...how }) => {
    const { key, version } = context.rules.desk;
    const confirmed = preUse && { list: { key, version }, language: preUse.language };
    const result = await record(context, async (reader, { on: today }) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const user = await personIn(reader, toUserId);
      if (isRefusal(user)) return user;
      const { custody } = row.device;
      const holder = custody && (await reader.person(custody.userId));
      return decideTransfer(row.device, { user, today, preUse: confirmed, ...how }, holder);
    });
    return isRefusal(result) ? result : {};
  },
});
