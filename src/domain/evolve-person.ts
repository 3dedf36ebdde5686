/** How a person of the station changes with an event. */
import type { RecordedEvent } from './event.ts';
import type { Person } from './person.ts';
import { type PersonEvent, personEvents } from './person-event.ts';

export const evolvePerson = (person: Person | undefined, recorded: RecordedEvent): Person | undefined => {
  const { seq, on, by, event } = recorded;
  if (event.type === 'record.amended' && event.correction.field === 'name') {
    const { amends, correction, because } = event;
    const amendment = { seq, amends, on, by, correction, because };
    return (
      person && {
        ...person,
        name: correction.now,
        amendments: [...(person.amendments ?? []), amendment],
      }
    );
  }
  if (!isPersonEvent(event)) return person;
  const entry = { seq, on, by, event };
  if (event.type === 'person.added') return { ...event.person, history: [entry] };
  return person && { ...changed(person, event), history: [...(person.history ?? []), entry] };
};

const isPersonEvent = (event: RecordedEvent['event']): event is PersonEvent =>
  personEvents.some(({ shape }) => shape.type.value === event.type);

const changed = (person: Person, event: Exclude<PersonEvent, { type: 'person.added' }>): Person => {
  switch (event.type) {
    case 'person.designated':
      return { ...person, designation: event.designation };
    case 'person.designation-ended':
      return withoutDesignation(person);
    case 'person.name-changed':
      return { ...person, name: event.name };
    case 'person.badge-changed':
      return { ...person, badge: event.badge };
    case 'person.roles-changed':
      return { ...person, roles: event.roles };
    case 'person.pin-set':
    case 'person.pin-refused':
      return person;
    case 'person.left':
      return { ...withoutDesignation(person), left: { on: event.leftOn, because: event.because } };
    case 'person.returned': {
      const { left: _left, ...back } = person;
      return back;
    }
  }
};

const withoutDesignation = ({ designation: _ended, ...person }: Person): Person => person;
