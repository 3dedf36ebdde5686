/** `session.sign-in`: a scanned badge says who works at this window. It never signs an inspection; that takes the PIN. */
import { z } from 'zod';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { badgeHolder } from '../badge.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { personView, personViewSchema } from '../person-view.ts';

export const sessionSignIn = defineOperation({
  name: 'session.sign-in',
  summary: 'A scanned badge says who works at this window.',
  kind: 'command',
  access: 'anyone',
  input: z.object({ badge: z.string().trim().min(1).max(200) }),
  output: z.object({ person: personViewSchema }),
  run: (context, { badge }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const held = await badgeHolder(reader, badge);
      if (held === undefined) return refusal('badge-unknown', { badge }, 'badge');
      const { person, replacedOn } = held;
      const { name, left } = person;
      if (replacedOn !== undefined)
        return refusal('badge-replaced', { badge, name, on: replacedOn }, 'badge');
      if (left !== undefined) return refusal('badge-of-leaver', { name, on: left.on }, 'badge');
      context.session.signIn(person.personId);
      return { person: await personView(reader, person, context.occasion(station).on) };
    }),
});
