/** Calendar arithmetic on dates without a time of day, as ECMA Temporal does it: a day past the month's end is clamped. */
import { Temporal } from 'temporal-polyfill';
import { type CalendarDate, calendarDate, type Instant } from './brand.ts';

/** `2025-08-31` + 6 months = `2026-02-28`. */
export const addMonths = (date: CalendarDate, months: number): CalendarDate =>
  calendarDate(Temporal.PlainDate.from(date).add({ months }, { overflow: 'constrain' }).toString());

export const addDays = (date: CalendarDate, days: number): CalendarDate =>
  calendarDate(Temporal.PlainDate.from(date).add({ days }).toString());

export const lastDayOfMonth = (date: CalendarDate): CalendarDate => {
  const { daysInMonth } = Temporal.PlainDate.from(date);
  return calendarDate(`${date.slice(0, 8)}${daysInMonth}`);
};

export const lastDayOfMonthBefore = (date: CalendarDate): CalendarDate =>
  addDays(calendarDate(`${date.slice(0, 8)}01`), -1);

/** Days from `from` to `to`; negative where `to` is earlier. */
export const daysBetween = (from: CalendarDate, to: CalendarDate): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / millisecondsADay);

/** Of a day in UTC, which has no clock changes (ECMA-262, time values); a date alone is parsed as its midnight there. */
const millisecondsADay = 86_400_000;

/** The calendar date of a moment in a time zone of the IANA database; throws RangeError where the zone is unknown. */
export const dateInZone = (moment: Instant, timeZone: string): CalendarDate =>
  calendarDate(Temporal.Instant.from(moment).toZonedDateTimeISO(timeZone).toPlainDate().toString());

/** The year of a date, or of a moment in UTC. */
export const yearOf = (on: CalendarDate | Instant): number => Number(on.slice(0, 4));

export const isTimeZone = (timeZone: string): boolean => {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(timeZone);
    return true;
  } catch {
    return false;
  }
};

/** The Monday of the week of a date (ISO 8601). */
export const mondayOf = (date: CalendarDate): CalendarDate =>
  addDays(date, 1 - Temporal.PlainDate.from(date).dayOfWeek);
