/** `custody.check-out`: devices go out to a user; each goes or stays by itself, and whatever stays is named with its reason. */
import { z } from 'zod';
import { type BenchId, benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { decideCheckOut, mayTakeOut } from '../../domain/decide/custody.ts';
import type { DomainEvent } from '../../domain/event.ts';
import { languageSchema } from '../../domain/message.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { inBothLanguages, type RefusedDevice, refusedDeviceSchema } from '../custody-view.ts';
import { deviceIn, personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { namesOf } from '../views.ts';

export const custodyCheckOut = defineOperation({
  name: 'custody.check-out',
  summary: 'Checks devices out to a user, each as far as it may go.',
  kind: 'command',
  access: ['attendant', 'administrator'],
  input: z.object({
    userId: z.string(),
    benchIds: z.array(benchIdSchema).min(1).max(50),
    expectedOn: calendarDateSchema.optional(),
    /** The user confirmed their inspection before use of these devices, by the list shown in this language. */
    preUse: z.object({ language: languageSchema }).optional(),
    kitId: z.string().optional(),
  }),
  output: z.object({ checkedOut: z.array(benchIdSchema), refused: z.array(refusedDeviceSchema) }),
  run: async (context, { userId, benchIds, expectedOn, preUse, kitId }) => {
    const { key, version } = context.rules.desk;
    const confirmed = preUse && { list: { key, version }, language: preUse.language };
    let checkedOut: BenchId[] = [];
    let refused: RefusedDevice[] = [];
    const result = await record(context, async (reader, { on: today }) => {
      checkedOut = [];
      refused = [];
      const user = await personIn(reader, userId);
      if (isRefusal(user)) return user;
      const unfit = mayTakeOut(user);
      if (unfit !== undefined) return unfit;
      const kit = kitId && (await reader.station())?.kits?.find((each) => each.kitId === kitId);
      if (kitId !== undefined && !kit) return refusal('kit-unknown', { kit: kitId }, 'kitId');
      const name = await namesOf(reader);
      const events: DomainEvent[] = [];
      for (const benchId of new Set(benchIds)) {
        const row = await deviceIn(reader, benchId);
        const decided = isRefusal(row)
          ? row
          : decideCheckOut(
              row.device,
              { user, today, expectedOn, preUse: confirmed },
              row.device.custody && name(row.device.custody.userId),
              kitId,
            );
        if (isRefusal(decided)) {
          refused.push({ benchId, code: decided.code, sentence: inBothLanguages(decided) });
        } else {
          checkedOut.push(benchId);
          events.push(...decided);
        }
      }
      return events;
    });
    return isRefusal(result) ? result : { checkedOut, refused };
  },
});
