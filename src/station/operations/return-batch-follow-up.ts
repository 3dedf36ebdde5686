/** `return-batch.follow-up`: the manufacturer was asked how a batch stands, what it said, and when it is asked next. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { decideFollowUp } from '../../domain/decide/held/return-batch.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { returnBatchIn } from '../case-file-in.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { returnBatchViewSchema, showReturnBatch } from '../return-view.ts';

export const returnBatchFollowUp = defineOperation({
  name: 'return-batch.follow-up',
  summary: 'Records what a manufacturer said of a return batch, and when it is asked next.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    batch: z.int().positive(),
    note: whySchema,
    nextOn: calendarDateSchema,
  }),
  output: z.object({ batch: returnBatchViewSchema }),
  run: async (context, { batch, note, nextOn }) => {
    const result = await record(context, async (reader, occasion) => {
      const known = await returnBatchIn(reader, batch);
      return isRefusal(known) ? known : decideFollowUp(known, note, nextOn, occasion);
    });
    return isRefusal(result) ? result : showReturnBatch(context, batch);
  },
});
