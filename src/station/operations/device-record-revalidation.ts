/** `device.record-revalidation`: a competent person records what the manufacturer's certificate of a revalidation says. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideRecordRevalidation } from '../../domain/decide/device-use.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { revalidationSchema } from '../../domain/revalidation.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const deviceRecordRevalidation = defineOperation({
  name: 'device.record-revalidation',
  summary: "Records the manufacturer's certificate of a revalidation, as a competent person.",
  kind: 'command',
  access: everyRole,
  input: revalidationSchema.extend({ benchId: benchIdSchema }),
  output: z.object({ changed: z.boolean() }),
  run: async (context, { benchId, ...revalidation }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, { on }) => {
      const row = await deviceIn(reader, benchId);
      return isRefusal(row) ? row : decideRecordRevalidation(row.device, revalidation, person, on);
    });
    return isRefusal(result) ? result : { changed: result.length > 0 };
  },
});
