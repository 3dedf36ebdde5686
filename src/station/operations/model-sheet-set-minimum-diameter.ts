/** `model-sheet.set-minimum-diameter`: enters the manufacturer's minimum diameter on a model sheet that is there already. */
import { z } from 'zod';
import { decideSetMinimumDiameter } from '../../domain/decide/model-sheet.ts';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const modelSheetSetMinimumDiameter = defineOperation({
  name: 'model-sheet.set-minimum-diameter',
  summary: "Enters the manufacturer's minimum diameter on a model sheet that is there already.",
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    modelSheetId: z.string(),
    lifelineMinimumDiameterMm: modelSheetSchema.shape.lifelineMinimumDiameterMm.unwrap(),
  }),
  output: z.object({ changed: z.boolean() }),
  run: async (context, { modelSheetId, lifelineMinimumDiameterMm }) => {
    const result = await record(context, async (reader) => {
      const sheet = await reader.modelSheet(modelSheetId);
      return sheet === undefined
        ? refusal('model-sheet-unknown', { modelSheetId }, 'modelSheetId')
        : decideSetMinimumDiameter(sheet, lifelineMinimumDiameterMm);
    });
    return isRefusal(result) ? result : { changed: result.length > 0 };
  },
});
