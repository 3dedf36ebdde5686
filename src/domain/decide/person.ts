/** The rules of people and their designations. */
import type { CalendarDate } from '../brand.ts';
import type { Designation, Person } from '../person.ts';
import { refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** `badgeMeans` says what the badge code means already, if anything: another person, a device, one of our own codes. */
export const decideAddPerson = (
  person: Omit<Person, 'designation'>,
  badgeMeans: string | undefined,
): Decision =>
  badgeMeans === undefined
    ? [{ type: 'person.added', person }]
    : refusal('badge-taken', { badge: person.badge, meaning: badgeMeans }, 'badge');

/** Training and the employer's written designation make a competent person (common practice, no source). */
export const decideDesignate = (person: Person, designation: Designation, today: CalendarDate): Decision => {
  if (designation.designatedOn > today) return refusal('designation-in-future', {}, 'designatedOn');
  if (designation.trainingValidUntil <= designation.designatedOn) {
    return refusal('training-ends-before-designation', {}, 'trainingValidUntil');
  }
  return [{ type: 'person.designated', personId: person.personId, designation }];
};
