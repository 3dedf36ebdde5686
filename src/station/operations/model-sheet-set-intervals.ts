/** `model-sheet.set-intervals`: enters how often the manufacturer wants devices inspected and revalidated, and how long they last. */
import { z } from 'zod';
import { decideSetIntervals } from '../../domain/decide/model-sheet.ts';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

const { manufacturerIntervalMonths, manufacturerRevalidationMonths, serviceLife } = modelSheetSchema.shape;

export const modelSheetSetIntervals = defineOperation({
  name: 'model-sheet.set-intervals',
  summary: "Enters the manufacturer's intervals and service life on a model sheet that is there already.",
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({
    modelSheetId: z.string(),
    /** As it is where it is absent; null where the manual states none. */
    manufacturerIntervalMonths: manufacturerIntervalMonths.unwrap().nullable().optional(),
    manufacturerRevalidationMonths: manufacturerRevalidationMonths.unwrap().nullable().optional(),
    serviceLife: serviceLife.unwrap().nullable().optional(),
  }),
  output: z.object({ changed: z.boolean() }),
  run: async (context, { modelSheetId, ...intervals }) => {
    const result = await record(context, async (reader) => {
      const sheet = await reader.modelSheet(modelSheetId);
      return sheet === undefined
        ? refusal('model-sheet-unknown', { modelSheetId }, 'modelSheetId')
        : decideSetIntervals(sheet, intervals);
    });
    return isRefusal(result) ? result : { changed: result.length > 0 };
  },
});
