/** An invented inspector, and their life told as events. */
import { calendarDate, instant } from '../../src/domain/brand.ts';
import type { DomainEvent } from '../../src/domain/event.ts';
import { evolvePerson } from '../../src/domain/evolve-person.ts';
import type { Designation, Person } from '../../src/domain/person.ts';

export const day = calendarDate;

export const designation = (changes: Partial<Designation> = {}): Designation => ({
  designatedBy: 'Head of depot',
  designatedOn: day('2025-01-10'),
  trainingValidUntil: day('2026-01-10'),
  ...changes,
});

export const added = (roles: Person['roles'] = ['inspector'], personId = 'P002'): DomainEvent => ({
  type: 'person.added',
  person: { personId, name: 'Ada Lorn', badge: 'AL-0001', roles },
});

/** An event and the day on which it was recorded. */
export type LifeEvent = readonly [on: string, event: DomainEvent];

/** The person after these events, each recorded by P001. */
export const personAfter = (...life: readonly LifeEvent[]): Person => {
  let person: Person | undefined;
  for (const [index, [on, event]] of life.entries()) {
    const at = instant(`${on}T08:00:00.000Z`);
    person = evolvePerson(person, { seq: index + 1, at, on: day(on), by: 'P001', event });
  }
  return person!;
};

export const designated = (changes: Partial<Designation> = {}, personId = 'P002'): DomainEvent => ({
  type: 'person.designated',
  personId,
  designation: designation(changes),
});
