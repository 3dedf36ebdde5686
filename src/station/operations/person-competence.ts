/** `person.competence`: whether a person was a competent person on a day, for a device, and what that rests on. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { competenceOn, competenceSchema } from '../../domain/competence.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn, personIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const personCompetence = defineOperation({
  name: 'person.competence',
  summary: 'Whether a person was a competent person on a day, for a device, and what that rests on.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    personId: z.string(),
    on: calendarDateSchema,
    /** Where it is absent, the scope of the designation is left aside. */
    benchId: benchIdSchema.optional(),
  }),
  output: z.object({ name: z.string(), competent: z.boolean(), competence: competenceSchema }),
  run: (context, { personId, on, benchId }) =>
    context.ledger.read(async (reader) => {
      const person = await personIn(reader, personId);
      if (isRefusal(person)) return person;
      const row = benchId === undefined ? undefined : await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const competence = competenceOn(person, on, row?.device);
      return { name: person.name, competent: competence.ground === 'designated', competence };
    }),
});
