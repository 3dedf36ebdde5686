/** `model-sheet.record`: enters a model from the maker's manual, once for all devices of that model and length. */
import { z } from 'zod';
import { decideRecordModelSheet } from '../../domain/decide/model-sheet.ts';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const modelSheetRecord = defineOperation({
  name: 'model-sheet.record',
  summary: "Enters a model from the maker's manual.",
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ modelSheet: modelSheetSchema.omit({ modelSheetId: true }) }),
  output: z.object({ modelSheet: modelSheetSchema }),
  run: async (context, input) => {
    let modelSheet = { modelSheetId: '', ...input.modelSheet };
    const result = await record(context, async (reader) => {
      const known = await reader.modelSheets();
      modelSheet = { ...input.modelSheet, modelSheetId: `M${String(known.length + 1).padStart(3, '0')}` };
      return decideRecordModelSheet(modelSheet, known);
    });
    return isRefusal(result) ? result : { modelSheet };
  },
});
