/** Dates of six digits, YYMMDD, as GS1 element strings carry them. */
import { calendarDate } from '../../domain/brand.ts';
import type { MarkedDate } from '../../domain/marking-data.ts';

/**
 * The century is found from the current year (GS1 General Specifications §7.12): a year that would be 51 to 99 years ahead
 * is of the century before, one that would be 50 to 99 years behind is of the next. Day 00 is the last day of the month.
 * `undefined` where there is no such day.
 */
export const readSixDigitDate = (digits: string, currentYear: number): MarkedDate | undefined => {
  const [, years, month, day] = /^(\d\d)(\d\d)(\d\d)$/.exec(digits) ?? [];
  if (years === undefined) return undefined;
  const ahead = Number(years) - (currentYear % 100);
  const century = Math.floor(currentYear / 100) + (ahead >= 51 ? -1 : ahead <= -50 ? 1 : 0);
  return markedDate(century * 100 + Number(years), Number(month), Number(day));
};

/** `undefined` where there is no such day; day 0 is the last one of the month. */
export const markedDate = (year: number, month: number, day: number): MarkedDate | undefined => {
  if (month < 1 || month > 12) return undefined;
  const last = lastDayOf(year, month);
  if (day > last) return undefined;
  const on = [String(year).padStart(4, '0'), ...[month, day === 0 ? last : day].map(twoDigits)].join('-');
  return { on: calendarDate(on), dayGiven: day !== 0 };
};

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** Of the Gregorian calendar (ISO 8601): February has 29 days where the year can be divided by 4, and by 400 if by 100. */
const lastDayOf = (year: number, month: number): number => {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
};
