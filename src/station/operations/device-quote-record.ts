/** `device-quote.record`: what a manufacturer asks for the repair of one held device. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { heldFault } from '../../domain/decide/held/evidence.ts';
import { deviceQuoteSchema } from '../../domain/held/return-batch.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const deviceQuoteRecord = defineOperation({
  name: 'device-quote.record',
  summary: 'Records what a manufacturer asks for the repair of one held device.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: deviceQuoteSchema.extend({ benchId: benchIdSchema }),
  output: z.object({}),
  run: async (context, { benchId, ...quote }) => {
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      return heldFault(row.device) ?? [{ type: 'device-quote.recorded', benchId, quote }];
    });
    return isRefusal(result) ? result : {};
  },
});
