/** `held.withdraw-evidence`: evidence does not count after all; a device that was released on it goes back to quarantine. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideWithdrawEvidence } from '../../domain/decide/held/evidence.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { foundSoFar } from '../found-so-far.ts';
import { heldViewSchema } from '../held-view.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { showHeld } from '../show-held.ts';

export const heldWithdrawEvidence = defineOperation({
  name: 'held.withdraw-evidence',
  summary: 'Withdraws evidence for the return of a held device.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    evidence: z.int().positive(),
    because: whySchema,
  }),
  output: z.object({ held: heldViewSchema }),
  run: async (context, { benchId, evidence, because }) => {
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const found = await foundSoFar(reader, row.device.openInspection, context.rules);
      return isRefusal(found) ? found : decideWithdrawEvidence(row.device, evidence, because, found);
    });
    return isRefusal(result) ? result : showHeld(context, benchId);
  },
});
