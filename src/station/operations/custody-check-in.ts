/**
 * `custody.check-in`: a device comes back with its answers. Any yes or doubt takes it out of service in the same append, as
 * soon as it is said; what is open then is answered with a further call.
 */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { checkInAnswerSchema } from '../../domain/custody/check-in-answer.ts';
import { openQuestionsSchema } from '../../domain/custody/open-check-in.ts';
import { placeCodeSchema } from '../../domain/custody/place-code.ts';
import { decideCheckIn } from '../../domain/decide/check-in.ts';
import { decideStore } from '../../domain/decide/shelf-count.ts';
import { messageSchema } from '../../domain/message.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { reasonSchema } from '../../domain/verdict.ts';
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
    /** Every reason for which it is out of service. */
    heldFor: z.array(reasonSchema),
    /** The quarantine tag that belongs on it from now on, where it was taken out of service now. */
    quarantineTag: z.int().optional(),
    /** What is still to be asked; absent where its check-in is over. */
    open: openQuestionsSchema.optional(),
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
    const removed = result.map(({ event }) => event).find((event) => event.type === 'device.removed');
    const row = await context.ledger.read((reader) => deviceIn(reader, benchId));
    if (isRefusal(row)) return row;
    const { standing, reasons, openCheckIn } = row.device;
    return {
      reasons: removed === undefined ? [] : removed.reasons,
      held: standing !== 'in service' && standing !== 'new',
      heldFor: [...reasons],
      ...(removed === undefined ? {} : { quarantineTag: removed.tagNumber }),
      ...(openCheckIn === undefined ? {} : { open: openCheckIn }),
      quarantinePlace: program.quarantinePlace,
    };
  },
});
