/** `record.amend`: corrects what one earlier event says, signed with the PIN; the event itself stays as it is. */
import { z } from 'zod';
import { wantedCorrectionSchema } from '../../domain/amendment.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { amend } from '../amend.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const recordAmend = defineOperation({
  name: 'record.amend',
  summary: 'Corrects what one earlier entry of the record says; both stay visible, and no verdict changes.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    /** Number of the event that is corrected, as `record.amendable` gives it. */
    amends: z.int().positive(),
    correction: wantedCorrectionSchema,
    because: whySchema,
    /** The marking on the device was read just now, by whoever corrects. */
    markingReadNow: z.boolean().default(false),
    pin: z.string().max(40),
  }),
  output: z.object({ seq: z.int() }),
  run: async (context, { amends, correction, because, markingReadNow, pin }) => {
    const { person, ledger, rules } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const amending = { amends, person, because, markingReadNow };
    const unfit = await ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const decision = await amend(reader, rules, correction, {
        ...amending,
        occasion: context.occasion(station),
      });
      return isRefusal(decision) ? decision : undefined;
    });
    if (unfit !== undefined) return unfit;
    const wrongPin = await context.pins.check(person, pin, context.now());
    if (wrongPin !== undefined) return wrongPin;
    const result = await record(context, (reader, occasion) =>
      amend(reader, rules, correction, { ...amending, occasion }),
    );
    if (isRefusal(result)) return result;
    return { seq: result[0]?.seq ?? 0 };
  },
});
