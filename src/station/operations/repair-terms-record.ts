/** `repair-terms.record`: what a manufacturer says of repairing a model: whether, for how much, and how long it takes. */
import { z } from 'zod';
import { repairTermsSchema } from '../../domain/held/return-batch.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const repairTermsRecord = defineOperation({
  name: 'repair-terms.record',
  summary: "Records the manufacturer's answer whether a model can be repaired, and its quote.",
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: repairTermsSchema.extend({ modelSheetId: z.string() }),
  output: z.object({}),
  run: async (context, { modelSheetId, ...terms }) => {
    const result = await record(context, async (reader) =>
      (await reader.modelSheet(modelSheetId)) === undefined
        ? refusal('model-sheet-unknown', { modelSheetId }, 'modelSheetId')
        : [{ type: 'repair-terms.recorded', modelSheetId, terms }],
    );
    return isRefusal(result) ? result : {};
  },
});
