/** `fall-case.show`: one fall case. */
import { z } from 'zod';
import { fallCaseViewSchema } from '../held-view.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { showFallCase } from '../show-fall-case.ts';

export const fallCaseShow = defineOperation({
  name: 'fall-case.show',
  summary: 'A fall case: what is known, who has the evidence, and what was found.',
  kind: 'query',
  access: everyRole,
  input: z.object({ fallCase: z.int().positive() }),
  output: z.object({ fallCase: fallCaseViewSchema }),
  run: (context, { fallCase }) => showFallCase(context, fallCase),
});
