/** `person.show`: one person with every designation they held and everything that was recorded about them. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { personIn, stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { personRecord, personRecordSchema } from '../person-view.ts';

export const personShow = defineOperation({
  name: 'person.show',
  summary: 'One person with every designation they held and everything that was recorded about them.',
  kind: 'query',
  access: everyRole,
  input: z.object({ personId: z.string() }),
  output: personRecordSchema,
  run: (context, { personId }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const person = await personIn(reader, personId);
      return isRefusal(person) ? person : personRecord(reader, person, context.occasion(station).on);
    }),
});
