/** The stretches of time by which the records are looked through. */
import { type CalendarDate, calendarDate } from '../../../src/domain/brand.ts';
import { addDays, addMonths } from '../../../src/domain/calendar.ts';

export type Period = 'all' | 'today' | 'month' | 'year' | `${number}`;

const yearsBack = 10;

/** Those that make sense on a day: the latest, then each calendar year. */
export const periodsUntil = (today: string): readonly Period[] => {
  const year = Number(today.slice(0, 4));
  const years = Array.from({ length: yearsBack }, (_, back): Period => `${year - back}`);
  return ['all', 'today', 'month', 'year', ...(year === 0 ? [] : years)];
};

/** First and last day; nothing where all time is meant. */
export const periodDays = (
  period: Period,
  today: CalendarDate,
): { readonly from?: CalendarDate; readonly until?: CalendarDate } => {
  switch (period) {
    case 'all':
      return {};
    case 'today':
      return { from: today };
    case 'month':
      return { from: addDays(today, -30) };
    case 'year':
      return { from: addMonths(today, -12) };
    default:
      return { from: calendarDate(`${period}-01-01`), until: calendarDate(`${period}-12-31`) };
  }
};
