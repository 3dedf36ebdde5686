/** `held.show`: one device that is held or scrapped: what holds it, the evidence, its case, and the next step. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { heldViewSchema } from '../held-view.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { blindFault } from '../reinspections/blindness.ts';
import { showHeld } from '../show-held.ts';

export const heldShow = defineOperation({
  name: 'held.show',
  summary: 'What holds a device, what is missing, and the next step.',
  kind: 'query',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema }),
  output: z.object({ held: heldViewSchema }),
  run: async (context, { benchId }) => {
    const hidden = await context.ledger.read(async (reader) => {
      const row = await deviceIn(reader, benchId);
      return isRefusal(row) ? row : blindFault(reader, row.device, context);
    });
    return hidden ?? showHeld(context, benchId);
  },
});
