/** `held.show`: one device that is held or scrapped: what holds it, the evidence, its case, and the next step. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { heldViewSchema } from '../held-view.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { showHeld } from '../show-held.ts';

export const heldShow = defineOperation({
  name: 'held.show',
  summary: 'What holds a device, what is missing, and the next step.',
  kind: 'query',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema }),
  output: z.object({ held: heldViewSchema }),
  run: (context, { benchId }) => showHeld(context, benchId),
});
