/** Dates as they stand on a tag: the month in letters, so that day and month are never mistaken for one another. */
import type { CalendarDate } from '../domain/brand.ts';
import type { Language } from '../domain/message.ts';
import { inEach, type Word, word } from './words.ts';

/** `NOV 2027`; where the languages of the tag abbreviate the month differently, both: `DEC/DIC 2027`. */
export const monthText = (date: CalendarDate, languages: readonly Language[]): string =>
  `${monthName(date, languages)} ${date.slice(0, 4)}`;

/** `24 NOV 2026`, `3 DEC/DIC 2026`. */
export const dateText = (date: CalendarDate, languages: readonly Language[]): string =>
  `${Number(date.slice(8, 10))} ${monthText(date, languages)}`;

const monthName = (date: CalendarDate, languages: readonly Language[]): string =>
  inEach(word(`month${date.slice(5, 7)}` as Word), languages).join('/');
