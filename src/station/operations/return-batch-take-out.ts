/** `return-batch.take-out`: a device stays here after all; its batch was not shipped yet. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideTakeOutOfBatch } from '../../domain/decide/held/return-batch.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { returnBatchIn } from '../case-file-in.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { returnBatchViewSchema, showReturnBatch } from '../return-view.ts';

export const returnBatchTakeOut = defineOperation({
  name: 'return-batch.take-out',
  summary: 'Takes a device out of a return batch that was not shipped.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ batch: z.int().positive(), benchId: benchIdSchema }),
  output: z.object({ batch: returnBatchViewSchema }),
  run: async (context, { batch, benchId }) => {
    const result = await record(context, async (reader) => {
      const known = await returnBatchIn(reader, batch);
      if (isRefusal(known)) return known;
      const row = await deviceIn(reader, benchId);
      return isRefusal(row) ? row : decideTakeOutOfBatch(known, row.device);
    });
    return isRefusal(result) ? result : showReturnBatch(context, batch);
  },
});
