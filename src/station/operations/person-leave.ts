/** `person.leave`: a person works here no more; the designation and signing in end, the record stays. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { decideLeave } from '../../domain/decide/person.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const personLeave = defineOperation({
  name: 'person.leave',
  summary: 'Records that a person works here no more; the designation ends, the record stays.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    personId: z.string(),
    /** The first day on which the person works here no more; today where it is absent. */
    leftOn: calendarDateSchema.optional(),
    because: whySchema,
  }),
  output: z.object({}),
  run: async (context, { personId, leftOn, because }) => {
    const result = await record(context, async (reader, { on }) => {
      const person = await personIn(reader, personId);
      if (isRefusal(person)) return person;
      return decideLeave(person, { leftOn: leftOn ?? on, because }, await reader.people(), on);
    });
    return isRefusal(result) ? result : {};
  },
});
