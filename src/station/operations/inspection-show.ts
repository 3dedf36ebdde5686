/** `inspection.show`: an inspection as it stands: its checks, answers, and the verdict that follows from them. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { caseIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { blindFault } from '../reinspections/blindness.ts';
import { showInspection } from '../show-inspection.ts';
import { inspectionViewSchema } from '../views.ts';

export const inspectionShow = defineOperation({
  name: 'inspection.show',
  summary: 'An inspection as it stands.',
  kind: 'query',
  access: everyRole,
  input: z.object({ inspection: z.int().positive() }),
  output: z.object({ inspection: inspectionViewSchema }),
  run: async (context, { inspection }) => {
    const hidden = await context.ledger.read(async (reader) => {
      const found = await caseIn(reader, inspection, context.rules);
      return isRefusal(found) ? found : blindFault(reader, found.device, context, inspection);
    });
    return hidden ?? showInspection(context, inspection);
  },
});
