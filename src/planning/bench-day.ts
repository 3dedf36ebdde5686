/** The days ahead, and how many inspections the bench can make on each. */
import { type BenchCapacity, type Closure, inspectionsIn, weekdays } from '../domain/bench-capacity.ts';
import type { CalendarDate } from '../domain/brand.ts';
import { addDays } from '../domain/calendar.ts';

export interface BenchDay {
  readonly on: CalendarDate;
  /** Whole inspections; 0 on a day on which the bench is closed. */
  readonly room: number;
  /** Why it is closed although its weekday is not. */
  readonly closed?: Closure;
}

/** Monday is 0, as ISO 8601 orders the week; 3 January 2000 was one. */
const weekdayOf = (on: CalendarDate): number => ((daysSinceMonday(on) % 7) + 7) % 7;

const daysSinceMonday = (on: CalendarDate): number =>
  Math.round((Date.parse(on) - Date.parse('2000-01-03')) / 86_400_000);

/** The Monday of the week of ISO 8601 that a day belongs to. */
export const mondayOf = (on: CalendarDate): CalendarDate => addDays(on, -weekdayOf(on));

/** `count` calendar days, the first of which is `first`. */
export const benchDays = (first: CalendarDate, count: number, capacity: BenchCapacity): readonly BenchDay[] =>
  Array.from({ length: count }, (_, index) => {
    const on = addDays(first, index);
    const closed = capacity.closures.find(({ from, until }) => from <= on && on <= until);
    if (closed !== undefined) return { on, room: 0, closed };
    const weekday = weekdays[weekdayOf(on)] ?? 'monday';
    return { on, room: inspectionsIn(capacity.hours[weekday], capacity) };
  });
