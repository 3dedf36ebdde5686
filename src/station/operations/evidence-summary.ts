/** `evidence.summary`: how many pictures lie beside the record, and how much room they take. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

export const evidenceSummary = defineOperation({
  name: 'evidence.summary',
  summary: 'How many pictures are kept, and how much room they take.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.object({ count: z.int(), bytes: z.int() }),
  run: ({ evidence }) => evidence.size(),
});
