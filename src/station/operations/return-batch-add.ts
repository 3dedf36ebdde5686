/** `return-batch.add`: held devices of one manufacturer go into a new return batch, or into one that was not shipped. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideAddToBatch } from '../../domain/decide/held/return-batch.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { returnBatchIn } from '../case-file-in.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { returnBatchViewSchema, showReturnBatch } from '../return-view.ts';

export const returnBatchAdd = defineOperation({
  name: 'return-batch.add',
  summary: 'Puts held devices into a return batch to their manufacturer.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    /** A new one where it is absent. */
    batch: z.int().positive().optional(),
    benchIds: z.array(benchIdSchema).min(1).max(200),
  }),
  output: z.object({ batch: returnBatchViewSchema }),
  run: async (context, { batch, benchIds }) => {
    let number = batch ?? 0;
    const result = await record(context, async (reader) => {
      const devices = [];
      for (const benchId of new Set(benchIds)) {
        const row = await deviceIn(reader, benchId);
        if (isRefusal(row)) return row;
        devices.push(row);
      }
      if (batch === undefined) {
        number = await reader.nextCaseFileNumber('return batch');
        return decideAddToBatch(number, devices);
      }
      const known = await returnBatchIn(reader, batch);
      return isRefusal(known) ? known : decideAddToBatch(known, devices);
    });
    return isRefusal(result) ? result : showReturnBatch(context, number);
  },
});
