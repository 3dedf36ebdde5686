/** `device.bench-ids`: the bench IDs of the register and nothing else, a page at a time. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const deviceBenchIds = defineOperation({
  name: 'device.bench-ids',
  summary: 'Every registered bench ID, a page at a time.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    /** The last one of the page before. */
    after: benchIdSchema.optional(),
    limit: z.int().min(1).max(10_000).default(10_000),
  }),
  output: z.object({ benchIds: z.array(benchIdSchema), isLast: z.boolean() }),
  run: (context, { after, limit }) =>
    context.ledger.read(async (reader) => {
      const found = await reader.benchIds(after, limit + 1);
      return { benchIds: found.slice(0, limit), isLast: found.length <= limit };
    }),
});
