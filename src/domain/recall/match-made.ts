/** Whether a date of manufacture, as it stands on a device or as far as it can be read, lies in a range of a notice. */
import { z } from 'zod';
import type { MatchLevel } from './match-level.ts';

/** A year, a month or a day. */
export const partialDateSchema = z
  .string()
  .regex(/^(?:19|20)\d\d(?:-(?:0[1-9]|1[0-2])(?:-(?:0[1-9]|[12]\d|3[01]))?)?$/, { error: 'date' });

/** From the beginning of the first until the end of the last; a range may be open on one side. */
export const madeRangeSchema = z.object({
  from: partialDateSchema.optional(),
  until: partialDateSchema.optional(),
});
export type MadeRange = z.infer<typeof madeRangeSchema>;

/** Certain where the whole span that the text leaves open is inside; possible where they meet, or nothing can be read. */
export const matchMade = (written: string, { from, until }: MadeRange): MatchLevel => {
  const span = spanOf(written);
  if (span === undefined) return 'possible';
  const first = firstDay(from ?? '0000');
  const last = lastDay(until ?? '9999');
  if (span.last < first || span.first > last) return 'no';
  return span.first >= first && span.last <= last ? 'certain' : 'possible';
};

interface Span {
  readonly first: string;
  readonly last: string;
}

const firstDay = (date: string): string => `${date}-01-01`.slice(0, 10);
/** The 31st of a shorter month is later than its last day and earlier than the next month, and so as good. */
const lastDay = (date: string): string => `${date}${date.length === 4 ? '-12-31' : '-31'}`.slice(0, 10);

/** Day, month and year in either order, the month as a number or a word; only the year of it is relied upon. */
const oneYear =
  /^(?:\d{1,2}[ ./-]+)?(?:(?:\d{1,2}|\p{L}{3,12}\.?)[ ./-]+)?(?<last>(?:19|20)\d\d)$|^(?<first>(?:19|20)\d\d)(?:[ ./-]+(?:\d{1,2}|\p{L}{3,12}\.?)){0,2}$/u;

/** The days that a date may mean: `20?8`, `2018-0?` and `2018-06-1?` leave all that fits open. */
const spanOf = (written: string): Span | undefined => {
  const text = written.trim();
  if (/^(?:[12?][\d?]{3})(?:-[\d?]{2}){0,2}$/.test(text)) return spanOfDigits(text);
  const groups = oneYear.exec(text)?.groups;
  const year = groups?.last ?? groups?.first;
  return year === undefined ? undefined : { first: firstDay(year), last: lastDay(year) };
};

const spanOfDigits = (text: string): Span => {
  const [year = '', month, day] = text.split('-');
  const months = month === undefined ? [] : fitting(month, 12);
  const days = day === undefined ? [] : fitting(day, 31);
  return {
    first: [year.replaceAll('?', '0'), months[0] ?? '01', days[0] ?? '01'].join('-'),
    last: [year.replaceAll('?', '9'), months.at(-1) ?? '12', days.at(-1) ?? '31'].join('-'),
  };
};

/** Numbers from 1 on, in two digits, that fit; none where no number does, and so nothing is known. */
const fitting = (mask: string, most: number): string[] =>
  Array.from({ length: most }, (_, index) => String(index + 1).padStart(2, '0')).filter((number) =>
    [...mask].every((sign, place) => sign === '?' || sign === number.charAt(place)),
  );
