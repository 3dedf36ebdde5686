/** `person.add`: a new person with a badge and roles. */
import { z } from 'zod';
import { decideAddPerson } from '../../domain/decide/person.ts';
import { roleSchema } from '../../domain/person.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { badgeCodeSchema, badgeMeaning } from '../badge.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const personAdd = defineOperation({
  name: 'person.add',
  summary: 'Adds a person with a badge and roles.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    name: z.string().trim().min(1).max(120),
    badge: badgeCodeSchema,
    roles: z.array(roleSchema).min(1),
  }),
  output: z.object({ personId: z.string() }),
  run: async (context, { name, badge, roles }) => {
    let personId = '';
    const result = await record(context, async (reader) => {
      personId = `P${String((await reader.people()).length + 1).padStart(3, '0')}`;
      return decideAddPerson(
        { personId, name, badge, roles: [...new Set(roles)] },
        await badgeMeaning(reader, badge),
      );
    });
    return isRefusal(result) ? result : { personId };
  },
});
