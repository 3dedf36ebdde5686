/** `fall-case.note`: what is known of a fall besides, or better, and photos of it. */
import { z } from 'zod';
import { decideNoteFallCase } from '../../domain/decide/held/fall-case.ts';
import { fallFactsSchema } from '../../domain/held/fall-case.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { fallCaseIn } from '../case-file-in.ts';
import { fallCaseViewSchema } from '../held-view.ts';
import { namedPersonFault } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { givenDocumentSchema, putDocuments } from '../put-document.ts';
import { record } from '../record.ts';
import { showFallCase } from '../show-fall-case.ts';

export const fallCaseNote = defineOperation({
  name: 'fall-case.note',
  summary: 'Adds to a fall case what is known besides.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    fallCase: z.int().positive(),
    facts: fallFactsSchema.default({}),
    photos: z.array(givenDocumentSchema).max(12).default([]),
  }),
  output: z.object({ fallCase: fallCaseViewSchema }),
  run: async (context, { fallCase, facts, photos }) => {
    const refused = await context.ledger.read(async (reader) => {
      const known = await fallCaseIn(reader, fallCase);
      return isRefusal(known) ? known : namedPersonFault(reader, facts.userId, 'facts.userId');
    });
    if (refused !== undefined) return refused;
    const files = await putDocuments(context.evidence, photos);
    if (isRefusal(files)) return files;
    const result = await record(context, async (reader, occasion) => {
      const file = await fallCaseIn(reader, fallCase);
      return isRefusal(file) ? file : decideNoteFallCase(file, facts, files, occasion);
    });
    return isRefusal(result) ? result : showFallCase(context, fallCase);
  },
});
