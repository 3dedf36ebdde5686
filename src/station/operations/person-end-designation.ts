/** `person.end-designation`: the written designation of a person ends, with its day and reason. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { decideEndDesignation } from '../../domain/decide/designation.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const personEndDesignation = defineOperation({
  name: 'person.end-designation',
  summary: 'Ends the written designation of a competent person, with its day and reason.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    personId: z.string(),
    /** The first day on which it does not count; today where it is absent. */
    endedOn: calendarDateSchema.optional(),
    because: whySchema,
  }),
  output: z.object({}),
  run: async (context, { personId, endedOn, because }) => {
    const result = await record(context, async (reader, { on }) => {
      const person = await personIn(reader, personId);
      return isRefusal(person)
        ? person
        : decideEndDesignation(person, { endedOn: endedOn ?? on, because }, on);
    });
    return isRefusal(result) ? result : {};
  },
});
