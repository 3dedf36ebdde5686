/** What happened to the people of the invented depot: added, designated after their training, and one who left. */
import type { CalendarDate } from '../../domain/brand.ts';
import { addDays } from '../../domain/calendar.ts';
import { decideDesignate } from '../../domain/decide/designation.ts';
import { decideAddPerson, decideLeave } from '../../domain/decide/person.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import type { DemoPerson } from './demo-files.ts';
import { minutesADay, type TimedStep } from './timed-step.ts';

/** `addedMinutesAgo` is when the station was made. */
export const lifeOfPerson = (
  { pin: _pin, designation, left, ...person }: DemoPerson,
  today: CalendarDate,
  addedMinutesAgo: number,
): readonly TimedStep[] => {
  const { personId } = person;
  return [
    {
      minutesAgo: addedMinutesAgo,
      by: 'station',
      decide: async () => {
        const added = decideAddPerson(person, undefined);
        return isRefusal(added) ? added : [...added, { type: 'person.pin-set' as const, personId }];
      },
    },
    ...(designation === undefined ? [] : [designated(personId, designation, today)]),
    ...(left === undefined ? [] : [gone(personId, left)]),
  ];
};

const designated = (
  personId: string,
  designation: NonNullable<DemoPerson['designation']>,
  today: CalendarDate,
): TimedStep => {
  const { designatedDaysAgo, trainingValidForDays, trainedDaysAgo, scope, ...words } = designation;
  return {
    minutesAgo: designatedDaysAgo * minutesADay,
    by: 'P001',
    decide: async (reader) => {
      const person = await personIn(reader, personId);
      if (isRefusal(person)) return person;
      const written = {
        ...words,
        designatedOn: addDays(today, -designatedDaysAgo),
        trainingValidUntil: addDays(today, trainingValidForDays),
        trainedOn: addDays(today, -trainedDaysAgo),
        ...(scope === undefined ? {} : { scope }),
      };
      return decideDesignate(person, written, today, await reader.modelSheets());
    },
  };
};

const gone = (personId: string, { daysAgo, because }: NonNullable<DemoPerson['left']>): TimedStep => ({
  minutesAgo: daysAgo * minutesADay,
  by: 'P001',
  decide: async (reader, { on }) => {
    const person = await personIn(reader, personId);
    return isRefusal(person)
      ? person
      : decideLeave(person, { leftOn: on, because }, await reader.people(), on);
  },
});
