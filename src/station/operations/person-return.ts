/** `person.return`: a person who had left works here again; to sign takes a new designation. */
import { z } from 'zod';
import { decideReturn } from '../../domain/decide/person.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const personReturn = defineOperation({
  name: 'person.return',
  summary: 'Records that a person who had left works here again; to sign takes a new designation.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({ personId: z.string(), because: whySchema }),
  output: z.object({}),
  run: async (context, { personId, because }) => {
    const result = await record(context, async (reader) => {
      const person = await personIn(reader, personId);
      return isRefusal(person) ? person : decideReturn(person, because);
    });
    return isRefusal(result) ? result : {};
  },
});
