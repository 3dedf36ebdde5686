/** `return-batch.show`: one return batch. */
import { z } from 'zod';
import { defineOperation, everyRole } from '../operation.ts';
import { returnBatchViewSchema, showReturnBatch } from '../return-view.ts';

export const returnBatchShow = defineOperation({
  name: 'return-batch.show',
  summary: 'A return batch: what is in it, where it is, and what came back.',
  kind: 'query',
  access: everyRole,
  input: z.object({ batch: z.int().positive() }),
  output: z.object({ batch: returnBatchViewSchema }),
  run: (context, { batch }) => showReturnBatch(context, batch),
});
