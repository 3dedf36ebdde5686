/** `reinspection.begin`: begins the blind second inspection of a device that was drawn. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideBeginBlind } from '../../domain/decide/reinspection.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';
import { showInspection } from '../show-inspection.ts';
import { inspectionViewSchema } from '../views.ts';

export const reinspectionBegin = defineOperation({
  name: 'reinspection.begin',
  summary: 'Begins the blind second inspection of a device that was drawn.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    benchId: benchIdSchema,
    /** The person says that they do not know what the first inspection found. */
    isUnaware: z.literal(true),
  }),
  output: z.object({ inspection: inspectionViewSchema }),
  run: async (context, { benchId }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    let number = 0;
    const result = await record(context, async (reader, occasion) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      number = await reader.nextInspectionNumber();
      return decideBeginBlind(row.device, number, context.rules.current.reference, person, occasion);
    });
    return isRefusal(result) ? result : showInspection(context, number);
  },
});
