/** `return-batch.ship`: the batch leaves with its declaration of condition and contamination; its devices are at the manufacturer. */
import { z } from 'zod';
import { decideShipBatch } from '../../domain/decide/held/return-batch.ts';
import { shipmentSchema } from '../../domain/held/return-batch.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { returnBatchIn } from '../case-file-in.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { returnBatchViewSchema, showReturnBatch } from '../return-view.ts';

export const returnBatchShip = defineOperation({
  name: 'return-batch.ship',
  summary: 'Ships a return batch: its devices are at the manufacturer from now on.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: shipmentSchema.extend({ batch: z.int().positive() }),
  output: z.object({ batch: returnBatchViewSchema }),
  run: async (context, { batch, ...shipment }) => {
    const result = await record(context, async (reader, occasion) => {
      const known = await returnBatchIn(reader, batch);
      return isRefusal(known) ? known : decideShipBatch(known, shipment, occasion);
    });
    return isRefusal(result) ? result : showReturnBatch(context, batch);
  },
});
