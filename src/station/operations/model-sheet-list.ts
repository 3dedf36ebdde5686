/** `model-sheet.list`: the model sheets of the station. */
import { z } from 'zod';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const modelSheetList = defineOperation({
  name: 'model-sheet.list',
  summary: 'The model sheets of the station.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({ modelSheets: z.array(modelSheetSchema) }),
  run: (context) =>
    context.ledger.read(async (reader) => ({ modelSheets: [...(await reader.modelSheets())] })),
});
