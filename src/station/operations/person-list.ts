/** `person.list`: the people of the station with their roles and designations. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { personView, personViewSchema } from '../person-view.ts';

export const personList = defineOperation({
  name: 'person.list',
  summary: 'The people of the station with their roles and designations.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({ people: z.array(personViewSchema) }),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const people = await reader.people();
      return { people: await Promise.all(people.map((person) => personView(reader, person, today))) };
    }),
});
