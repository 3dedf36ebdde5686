/** The rules of people: who is added, changed, leaves and returns. */
import type { CalendarDate } from '../brand.ts';
import type { DomainEvent } from '../event.ts';
import { isAdministrator, type Person, type Role } from '../person.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** `badgeMeans` says what the badge code means already, if anything: another person, a device, one of our own codes. */
export const decideAddPerson = (
  person: Omit<Person, 'designation' | 'left' | 'history'>,
  badgeMeans: string | undefined,
): Decision =>
  badgeMeans === undefined
    ? [{ type: 'person.added', person }]
    : refusal('badge-taken', { badge: person.badge, meaning: badgeMeans }, 'badge');

/** What is to be different; what is absent, or as it is already, stays. */
export interface PersonChange {
  readonly name?: string | undefined;
  readonly badge?: string | undefined;
  readonly roles?: readonly Role[] | undefined;
}

/** `people` are all of the station; `badgeMeans` says what the new badge code means already. */
export const decideChangePerson = (
  person: Person,
  { name, badge, roles }: PersonChange,
  because: string,
  people: readonly Person[],
  badgeMeans: string | undefined,
): Decision => {
  if (person.left !== undefined) return hasLeft(person);
  const { personId } = person;
  const events: DomainEvent[] = [];
  if (name !== undefined && name !== person.name)
    events.push({ type: 'person.name-changed', personId, name, because });
  if (badge !== undefined && badge !== person.badge) {
    if (badgeMeans !== undefined) return refusal('badge-taken', { badge, meaning: badgeMeans }, 'badge');
    events.push({ type: 'person.badge-changed', personId, badge, because });
  }
  if (roles !== undefined && !sameRoles(roles, person.roles)) {
    if (!roles.includes('administrator') && isLastAdministrator(person, people))
      return refusal('last-administrator', { name: person.name }, 'roles');
    events.push({ type: 'person.roles-changed', personId, roles: [...new Set(roles)], because });
  }
  return events.length === 0 ? refusal('person-unchanged', { name: person.name }) : events;
};

const sameRoles = (one: readonly Role[], other: readonly Role[]): boolean =>
  one.length === other.length && one.every((role) => other.includes(role));

const isLastAdministrator = (person: Person, people: readonly Person[]): boolean =>
  isAdministrator(person) &&
  !people.some((other) => other.personId !== person.personId && isAdministrator(other));

/**
 * Whoever puts a new PIN in the place of another person's says why. The first PIN, and a person's own change, need no
 * reason.
 */
export const decideSetPin = (
  person: Person,
  {
    wasSet,
    by,
    because,
  }: { readonly wasSet: boolean; readonly by: string; readonly because?: string | undefined },
): Decision => {
  const { personId } = person;
  if (person.left !== undefined) return hasLeft(person);
  if (wasSet && by !== personId && because === undefined)
    return refusal('pin-reset-reason-needed', { name: person.name }, 'because');
  return [{ type: 'person.pin-set', personId, ...(because === undefined ? {} : { because }) }];
};

/** The last administrator stays: without one nobody could add another. */
export const decideLeave = (
  person: Person,
  { leftOn, because }: { readonly leftOn: CalendarDate; readonly because: string },
  people: readonly Person[],
  today: CalendarDate,
): Decision => {
  if (person.left !== undefined) return hasLeft(person);
  if (leftOn > today) return refusal('leaving-in-future', {}, 'leftOn');
  if (isLastAdministrator(person, people)) return refusal('last-administrator', { name: person.name });
  return [{ type: 'person.left', personId: person.personId, leftOn, because }];
};

export const decideReturn = (person: Person, because: string): Decision =>
  person.left === undefined
    ? refusal('person-has-not-left', { name: person.name })
    : [{ type: 'person.returned', personId: person.personId, because }];

export const hasLeft = ({ name, left }: Person): Refusal =>
  refusal('person-has-left', { name, on: left?.on ?? '' });
