/** `model-sheet.set-contact`: enters how a manufacturer is reached, on all of its model sheets. */
import { z } from 'zod';
import { decideSetContact } from '../../domain/decide/model-sheet.ts';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const modelSheetSetContact = defineOperation({
  name: 'model-sheet.set-contact',
  summary: 'Enters how a manufacturer is reached, on all of its model sheets.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    manufacturer: modelSheetSchema.shape.manufacturer,
    manufacturerContact: modelSheetSchema.shape.manufacturerContact.unwrap(),
  }),
  output: z.object({ modelSheets: z.int() }),
  run: async (context, { manufacturer, manufacturerContact }) => {
    const result = await record(context, async (reader) =>
      decideSetContact(manufacturer, manufacturerContact, await reader.modelSheets()),
    );
    return isRefusal(result) ? result : { modelSheets: result.length };
  },
});
