/** `held.confirm-evidence`: a second competent person looked at the device, agrees to what was written, and signs with their PIN. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideConfirmEvidence, evidenceIn, unfitToConfirm } from '../../domain/decide/held/evidence.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { heldViewSchema } from '../held-view.ts';
import { deviceIn, stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { record } from '../record.ts';
import { showHeld } from '../show-held.ts';

export const heldConfirmEvidence = defineOperation({
  name: 'held.confirm-evidence',
  summary: 'A second competent person agrees to what was written about a held device.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    benchId: benchIdSchema,
    evidence: z.int().positive(),
    lookedAtDevice: z.literal(true),
    pin: z.string().max(40),
  }),
  output: z.object({ held: heldViewSchema }),
  run: async (context, { benchId, evidence, pin }) => {
    const { person, rules, ledger } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const unfit = await ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const entry = evidenceIn(row.device, evidence);
      return isRefusal(entry) ? entry : unfitToConfirm(entry, person, context.occasion(station));
    });
    if (unfit !== undefined) return unfit;
    const wrongPin = await context.pins.check(person, pin, context.now());
    if (wrongPin !== undefined) return wrongPin;
    const result = await record(context, async (reader, occasion) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const terms = { rules: rules.release, program: await programIn(reader, rules) };
      return decideConfirmEvidence(row.device, evidence, terms, person, occasion);
    });
    return isRefusal(result) ? result : showHeld(context, benchId);
  },
});
