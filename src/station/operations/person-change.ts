/** `person.change`: another name, badge or other roles, with the reason. */
import { z } from 'zod';
import { decideChangePerson } from '../../domain/decide/person.ts';
import { personSchema, roleSchema } from '../../domain/person.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { badgeCodeSchema, badgeMeaning } from '../badge.ts';
import { personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const personChange = defineOperation({
  name: 'person.change',
  summary: 'Changes the name, the badge or the roles of a person; an earlier badge never signs in again.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    personId: z.string(),
    name: personSchema.shape.name.optional(),
    badge: badgeCodeSchema.optional(),
    roles: z.array(roleSchema).min(1).optional(),
    because: whySchema,
  }),
  output: z.object({}),
  run: async (context, { personId, because, ...change }) => {
    const result = await record(context, async (reader) => {
      const person = await personIn(reader, personId);
      if (isRefusal(person)) return person;
      const { badge } = change;
      const meaning = badge === undefined ? undefined : await badgeMeaning(reader, badge);
      return decideChangePerson(person, change, because, await reader.people(), meaning);
    });
    return isRefusal(result) ? result : {};
  },
});
