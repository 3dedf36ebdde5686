/** How much comes due in each week or month, whenever the bench does it. */
import type { CalendarDate } from '../domain/brand.ts';
import { addDays, addMonths, mondayOf } from '../domain/calendar.ts';

export type PeriodKind = 'week' | 'month';

export interface Period {
  /** Its first and its last day; a week is from Monday to Sunday. */
  readonly from: CalendarDate;
  readonly until: CalendarDate;
  readonly due: number;
}

export interface Workload {
  /** Due before today: first of all. */
  readonly overdue: number;
  /** One after the other without a gap, from the one of today to the last in which anything is due. */
  readonly periods: readonly Period[];
}

/** In the period of today, only what is due from today on counts. */
export const workload = (
  dueDates: readonly CalendarDate[],
  today: CalendarDate,
  kind: PeriodKind,
): Workload => {
  const ahead = dueDates.filter((dueOn) => dueOn >= today).sort();
  const periods: Period[] = [];
  const lastDue = ahead.at(-1) ?? today;
  let next = 0;
  for (let from = firstDayOf(today, kind); from <= lastDue; from = nextFirstDay(from, kind)) {
    const until = addDays(nextFirstDay(from, kind), -1);
    const before = next;
    while ((ahead[next] ?? '9') <= until) next += 1;
    periods.push({ from, until, due: next - before });
  }
  return { overdue: dueDates.length - ahead.length, periods };
};

const firstDayOf = (on: CalendarDate, kind: PeriodKind): CalendarDate =>
  kind === 'week' ? mondayOf(on) : addDays(on, 1 - Number(on.slice(8)));

const nextFirstDay = (first: CalendarDate, kind: PeriodKind): CalendarDate =>
  kind === 'week' ? addDays(first, 7) : addMonths(first, 1);
