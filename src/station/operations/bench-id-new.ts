/** `bench-id.new`: a bench ID that no device of this station has or ever had, for a label made in advance. */
import { z } from 'zod';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { benchIdSchema } from '../../domain/brand.ts';
import { freeBenchId } from '../free-bench-id.ts';
import { defineOperation } from '../operation.ts';

export const benchIdNew = defineOperation({
  name: 'bench-id.new',
  summary: 'A bench ID that no device of this station has.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.object({ benchId: benchIdSchema, shown: z.string() }),
  run: async ({ ledger, randomBytes }) => {
    const benchId = await ledger.read((reader) => freeBenchId(reader, randomBytes));
    return { benchId, shown: formatBenchId(benchId) };
  },
});
