/** `fall-case.list`: every fall case, or those that are open, the newest first. */
import { z } from 'zod';
import { fallCaseView, fallCaseViewSchema } from '../held-view.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { namesOf } from '../views.ts';

export const fallCaseList = defineOperation({
  name: 'fall-case.list',
  summary: 'Every fall case, or those that are open.',
  kind: 'query',
  access: everyRole,
  input: z.object({ open: z.boolean().default(false) }),
  output: z.object({ cases: z.array(fallCaseViewSchema) }),
  run: (context, { open }) =>
    context.ledger.read(async (reader) => {
      const name = await namesOf(reader);
      const files = await reader.caseFiles('fall case', open ? ['open'] : undefined);
      return { cases: files.map((file) => fallCaseView(file, name)) };
    }),
});
