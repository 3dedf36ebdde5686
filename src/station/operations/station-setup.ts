/** `station.setup`: makes an empty data folder into a station with its first administrator. */
import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { dateInZone, isTimeZone } from '../../domain/calendar.ts';
import { decideDesignate } from '../../domain/decide/designation.ts';
import { decideAddPerson } from '../../domain/decide/person.ts';
import { lengthUnitSchema } from '../../domain/length.ts';
import { designationSchema } from '../../domain/person.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { badgeCodeSchema, badgeMeaning } from '../badge.ts';
import { defineOperation } from '../operation.ts';
import { hashPin, isWeakPin } from '../pin.ts';
import { keyMade } from '../station-key.ts';

export const stationSetup = defineOperation({
  name: 'station.setup',
  summary: 'Makes an empty data folder into a station with its first administrator.',
  kind: 'command',
  access: 'anyone',
  input: z.object({
    name: z.string().trim().min(1).max(80),
    timeZone: z.string().trim(),
    lengthUnit: lengthUnitSchema,
    administrator: z.object({
      name: z.string().trim().min(1).max(120),
      badge: badgeCodeSchema,
      pin: z.string(),
      /** Where the administrator is a designated inspector as well. */
      designation: designationSchema.optional(),
    }),
  }),
  output: z.object({ personId: z.string() }),
  run: async (context, { name, timeZone, lengthUnit, administrator }) => {
    if (!isTimeZone(timeZone)) return refusal('time-zone-unknown', { timeZone }, 'timeZone');
    if (isWeakPin(administrator.pin)) return refusal('pin-too-weak', {}, 'administrator.pin');
    const personId = 'P001';
    const credential = await hashPin(personId, administrator.pin);
    const made = await keyMade(context.ledger);
    const at = context.now();
    const on = dateInZone(at, timeZone);
    const { designation } = administrator;
    const roles =
      designation === undefined ? (['administrator'] as const) : (['administrator', 'inspector'] as const);
    const person = { personId, name: administrator.name, badge: administrator.badge, roles: [...roles] };
    const result = await context.ledger.append(
      { at, on, by: 'station' },
      async (reader) => {
        if ((await reader.station()) !== undefined) return refusal('station-already-set-up');
        const added = decideAddPerson(person, await badgeMeaning(reader, person.badge));
        if (isRefusal(added)) return added;
        const designated = designation === undefined ? [] : decideDesignate(person, designation, on, []);
        if (isRefusal(designated)) return designated;
        return [
          { type: 'station.created', stationId: randomUUID(), name, timeZone, lengthUnit, demo: false },
          made,
          ...added,
          { type: 'person.pin-set', personId },
          ...designated,
        ];
      },
      (writer) => writer.putCredential(credential),
    );
    if (isRefusal(result)) return result;
    context.session.signIn(personId);
    return { personId };
  },
});
