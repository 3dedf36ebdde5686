/** `custody.check-in`: a device comes back with its answers; any yes or doubt takes it out of service in the same append. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { checkInAnswerSchema } from '../../domain/custody/check-in-answer.ts';
import { placeCodeSchema } from '../../domain/custody/place-code.ts';
import { decideCheckIn } from '../../domain/decide/check-in.ts';
import { decideStore } from '../../domain/decide/shelf-count.ts';
import { messageSchema } from '../../domain/message.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { type Reason, reasonSchema } from '../../domain/verdict.ts';
import { foundSoFar } from '../found-so-far.ts';
import { deviceIn, personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { record } from '../record.ts';

export const custodyCheckIn = defineOperation({
  name: 'custody.check-in',
  summary: 'Checks a device in with the answers of whoever brings it.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    answers: z.array(checkInAnswerSchema).max(20),
    /** Whose answers they are; the attendant's own where absent. */
    answeredBy: z.string().optional(),
    /** It is not recorded out, and came back or was found all the same. */
    withoutCheckOut: z.boolean().default(false),
    /** Where it is put, if that is its place from now on. */
    place: placeCodeSchema.optional(),
  }),
  output: z.object({
    /** Why it was taken out of service now; empty where nothing was answered yes. */
    reasons: z.array(reasonSchema),
    /** True where it is out of service, now or since before. */
    held: z.boolean(),
    quarantinePlace: messageSchema,
  }),
  run: async (context, { benchId, answers, answeredBy, withoutCheckOut, place }) => {
    const program = await context.ledger.read((reader) => programIn(reader, context.rules));
    const result = await record(context, async (reader, { by }) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const found = await foundSoFar(reader, row.device.openInspection, context.rules);
      if (isRefusal(found)) return found;
      const who = await personIn(reader, answeredBy ?? by);
      if (isRefusal(who)) return who;
      const checkIn = { answeredBy: who.personId, answers, withoutCheckOut };
      const decided = decideCheckIn(row.device, context.rules.desk, checkIn, found);
      if (isRefusal(decided)) return decided;
      const held = decided.some(({ type }) => type === 'device.removed');
      const stored = place === undefined || held ? [] : decideStore(row.device, place);
      return isRefusal(stored) ? stored : [...decided, ...stored];
    });
    if (isRefusal(result)) return result;
    const reasons = result.flatMap(({ event }): readonly Reason[] =>
      event.type === 'device.removed' ? event.reasons : [],
    );
    const row = await context.ledger.read((reader) => deviceIn(reader, benchId));
    if (isRefusal(row)) return row;
    const { standing } = row.device;
    return {
      reasons: [...reasons],
      held: standing !== 'in service' && standing !== 'new',
      quarantinePlace: program.quarantinePlace,
    };
  },
});
