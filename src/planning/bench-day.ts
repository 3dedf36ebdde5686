/** The days ahead, and how many inspections the bench can make on each. */
import { type BenchCapacity, type Closure, inspectionsIn, weekdays } from '../domain/bench-capacity.ts';
import type { CalendarDate } from '../domain/brand.ts';
import { addDays, daysBetween, mondayOf } from '../domain/calendar.ts';

export interface BenchDay {
  readonly on: CalendarDate;
  /** Whole inspections; 0 on a day on which the bench is closed. */
  readonly room: number;
  /** Why it is closed although its weekday is not. */
  readonly closed?: Closure;
}

/** `count` calendar days, the first of which is `first`. */
export const benchDays = (first: CalendarDate, count: number, capacity: BenchCapacity): readonly BenchDay[] =>
  Array.from({ length: count }, (_, index) => {
    const on = addDays(first, index);
    const closed = capacity.closures.find(({ from, until }) => from <= on && on <= until);
    if (closed !== undefined) return { on, room: 0, closed };
    const weekday = weekdays[daysBetween(mondayOf(on), on)] ?? 'monday';
    return { on, room: inspectionsIn(capacity.hours[weekday], capacity) };
  });
