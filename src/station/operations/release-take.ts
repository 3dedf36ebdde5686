/** `release.take`: the quarantine tag is scanned back in and destroyed, and the device goes back to the bench to be inspected anew. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideRelease } from '../../domain/decide/held/release.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { heldViewSchema } from '../held-view.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { quarantineTagIn } from '../quarantine-tag-in.ts';
import { record } from '../record.ts';
import { showHeld } from '../show-held.ts';

export const releaseTake = defineOperation({
  name: 'release.take',
  summary: 'Scans the quarantine tag of a held device back in: it goes back to the bench.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    /** The text of the symbol on the tag, or the number that stands on it. */
    tag: z.string().trim().min(1).max(200),
  }),
  output: z.object({ held: heldViewSchema }),
  run: async (context, { benchId, tag }) => {
    const result = await record(context, async (reader, { on }) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const terms = { rules: context.rules.release, program: await programIn(reader, context.rules) };
      const tagNumber = await quarantineTagIn(reader, row.device, tag, on);
      return isRefusal(tagNumber) ? tagNumber : decideRelease(row.device, tagNumber, terms);
    });
    return isRefusal(result) ? result : showHeld(context, benchId);
  },
});
