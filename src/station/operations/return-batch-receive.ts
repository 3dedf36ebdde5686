/** `return-batch.receive`: a device is back from its manufacturer, with what became of it; it is quarantined until its evidence is recorded. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideComeBack } from '../../domain/decide/held/return-batch.ts';
import { certificateSchema } from '../../domain/held/evidence.ts';
import { returnOutcomeSchema } from '../../domain/held/return-batch.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { returnBatchIn } from '../case-file-in.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { returnBatchViewSchema, showReturnBatch } from '../return-view.ts';

export const returnBatchReceive = defineOperation({
  name: 'return-batch.receive',
  summary: 'Records that a device came back from its manufacturer, and what became of it.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    batch: z.int().positive(),
    benchId: benchIdSchema,
    outcome: returnOutcomeSchema,
    certificate: certificateSchema.optional(),
  }),
  output: z.object({ batch: returnBatchViewSchema }),
  run: async (context, { batch, benchId, outcome, certificate }) => {
    const result = await record(context, async (reader, occasion) => {
      const known = await returnBatchIn(reader, batch);
      if (isRefusal(known)) return known;
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      return decideComeBack(known, row.device, { outcome, certificate }, occasion);
    });
    return isRefusal(result) ? result : showReturnBatch(context, batch);
  },
});
