/** `inspection.show`: an inspection as it stands: its checks, answers, and the verdict that follows from them. */
import { z } from 'zod';
import { defineOperation, everyRole } from '../operation.ts';
import { showInspection } from '../show-inspection.ts';
import { inspectionViewSchema } from '../views.ts';

export const inspectionShow = defineOperation({
  name: 'inspection.show',
  summary: 'An inspection as it stands.',
  kind: 'query',
  access: everyRole,
  input: z.object({ inspection: z.number().int().positive() }),
  output: z.object({ inspection: inspectionViewSchema }),
  run: (context, { inspection }) => showInspection(context, inspection),
});
