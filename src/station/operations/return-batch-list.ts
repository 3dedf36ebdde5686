/** `return-batch.list`: the return batches, the newest first, and how long each manufacturer takes. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { returnBatchView, returnBatchViewSchema, turnaroundSchema, turnarounds } from '../return-view.ts';

export const returnBatchList = defineOperation({
  name: 'return-batch.list',
  summary: 'The return batches, and how long each manufacturer takes.',
  kind: 'query',
  access: everyRole,
  input: z.object({ open: z.boolean().default(false) }),
  output: z.object({ batches: z.array(returnBatchViewSchema), turnarounds: z.array(turnaroundSchema) }),
  run: (context, { open }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const { dueSoonDays } = await programIn(reader, context.rules);
      const all = await reader.caseFiles('return batch');
      const batches = [];
      for (const batch of all)
        if (!open || batch.phase !== 'closed')
          batches.push(await returnBatchView(reader, batch, today, dueSoonDays));
      return { batches, turnarounds: turnarounds(all) };
    }),
});
