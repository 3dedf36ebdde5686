/** The badges that a person had before: none of them ever signs in again. */
import type { CalendarDate } from './brand.ts';
import type { Person } from './person.ts';

export interface EarlierBadge {
  readonly badge: string;
  readonly replacedOn: CalendarDate;
}

/** Oldest first. */
export const earlierBadges = ({ history = [] }: Person): readonly EarlierBadge[] => {
  const earlier: EarlierBadge[] = [];
  let badge: string | undefined;
  for (const { event, on } of history) {
    if (event.type === 'person.added') badge = event.person.badge;
    if (event.type !== 'person.badge-changed') continue;
    if (badge !== undefined) earlier.push({ badge, replacedOn: on });
    badge = event.badge;
  }
  return earlier;
};
