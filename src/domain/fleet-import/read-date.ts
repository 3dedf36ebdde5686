/** Dates as lists write them, in three orders; what a date alone cannot say is decided by its column, or asked. */
import { Temporal } from 'temporal-polyfill';
import { type Cell, plainWords } from './cell.ts';
import { type DateOrder, dateOrders } from './column-meaning.ts';
import type { ValueWords } from './import-words.ts';

/** A year, a month or a day, in the form of ISO 8601: `2019`, `2019-03`, `2019-03-05`. */
export type PartialDate = string;

export type DateReading =
  | { readonly kind: 'date'; readonly date: PartialDate }
  /** Three numbers that are a date in these orders; at least one, and more than one only where the dates differ. */
  | { readonly kind: 'by order'; readonly dates: Readonly<Partial<Record<DateOrder, PartialDate>>> }
  | { readonly kind: 'not read' };

export interface DateRules {
  /** The year in which the list is read. */
  readonly currentYear: number;
  readonly daysFrom1904: boolean;
  readonly words: ValueWords;
}

const notRead: DateReading = { kind: 'not read' };
/** No device in use, and no inspection of one, is older (common practice, no source). */
const firstYear = 1950;

export const readDate = (cell: Cell, rules: DateRules): DateReading => {
  const { kind, text } = cell;
  if (kind === 'date') return dated(text, rules);
  if (kind === 'number') return ofNumber(text, rules);
  const plain = text.trim().replace(/[T ]\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?( ?[ap]\.? ?m\.?|Z)?$/i, '');
  const parts = plain.split(/\s*[-/.\s]\s*/).filter((part) => part !== '');
  return parts.every((part) => /^\d+$/.test(part)) ? ofNumbers(parts, rules) : ofWords(plain, rules);
};

const dated = (date: PartialDate, { currentYear }: DateRules): DateReading => {
  const year = Number(date.slice(0, 4));
  return year >= firstYear && year <= currentYear + 100 ? { kind: 'date', date } : notRead;
};

/**
 * A spreadsheet keeps a day as a number: 61 is 1 March 1900, or, where the days count from 1904, 0 is 1 January 1904
 * (ECMA-376 part 1, §18.17.4.1). A whole number that is a year of our time is taken for the year.
 */
const ofNumber = (text: string, rules: DateRules): DateReading => {
  const value = Number(text);
  if (!Number.isFinite(value)) return notRead;
  if (Number.isInteger(value) && value >= firstYear && value <= rules.currentYear) return dated(text, rules);
  if (/^\d{8}$/.test(text)) return ofNumbers([text], rules);
  const days = Math.floor(value);
  if (days < 61 || days > 100_000) return notRead;
  const origin = Temporal.PlainDate.from(rules.daysFrom1904 ? '1904-01-01' : '1899-12-30');
  return dated(origin.add({ days }).toString(), rules);
};

const ofNumbers = (parts: readonly string[], rules: DateRules): DateReading => {
  const [first = '', second = '', third = ''] = parts;
  if (parts.length === 1) {
    if (/^\d{4}$/.test(first)) return day(first, undefined, undefined, rules);
    return /^\d{8}$/.test(first) ? day(first.slice(0, 4), first.slice(4, 6), first.slice(6), rules) : notRead;
  }
  if (parts.length === 2) {
    if (first.length === 4) return day(first, second, undefined, rules);
    return second.length === 4 ? day(second, first, undefined, rules) : notRead;
  }
  if (parts.length !== 3) return notRead;
  if (first.length === 4) return day(first, second, third, rules);
  const orders: Readonly<Record<DateOrder, DateReading>> = {
    dmy: day(third, second, first, rules),
    mdy: day(third, first, second, rules),
    ymd: third.length > 2 ? notRead : day(first, second, third, rules),
  };
  const dates = Object.fromEntries(
    dateOrders.flatMap((order) => {
      const reading = orders[order];
      return reading.kind === 'date' ? [[order, reading.date]] : [];
    }),
  ) as Partial<Record<DateOrder, PartialDate>>;
  return Object.keys(dates).length === 0 ? notRead : { kind: 'by order', dates };
};

/** `5 March 2024`, `March 5, 2024`, `5 de marzo de 2024`, `Mar 2024`. */
const ofWords = (text: string, rules: DateRules): DateReading => {
  const words = plainWords(text)
    .split(' ')
    .flatMap((word) => (/^\d{1,2}(st|nd|rd|th)$/.test(word) ? [word.replace(/\D/g, '')] : [word]))
    .filter((word) => word !== 'de' && word !== 'del' && word !== 'of');
  const months = words.map((word) => monthNamed(word, rules.words));
  const month = months.find((found) => found !== undefined);
  const numbers = words.filter((_, index) => months[index] === undefined);
  if (
    month === undefined ||
    words.length - numbers.length !== 1 ||
    !numbers.every((part) => /^\d+$/.test(part))
  )
    return notRead;
  const [first = '', second = ''] = numbers;
  if (numbers.length === 1) return first.length === 4 ? day(first, month, undefined, rules) : notRead;
  if (numbers.length !== 2) return notRead;
  return first.length === 4 ? day(first, month, second, rules) : day(second, month, first, rules);
};

const monthNamed = (word: string, { months }: ValueWords): string | undefined => {
  const index = months.findIndex((names) => names.includes(word));
  return index < 0 ? undefined : String(index + 1);
};

const day = (
  year: string,
  month: string | undefined,
  dayOfMonth: string | undefined,
  rules: DateRules,
): DateReading => {
  const whole = wholeYear(year, rules);
  if (whole === undefined) return notRead;
  try {
    const date = Temporal.PlainDate.from(
      { year: whole, month: Number(month ?? 1), day: Number(dayOfMonth ?? 1) },
      { overflow: 'reject' },
    ).toString();
    return dated(date.slice(0, month === undefined ? 4 : dayOfMonth === undefined ? 7 : 10), rules);
  } catch {
    return notRead;
  }
};

/** Of two digits: the latest year with these that is not to come (common practice, no source). */
const wholeYear = (year: string, { currentYear }: DateRules): number | undefined => {
  if (year.length === 4) return Number(year);
  if (year.length !== 2) return undefined;
  const inThisCentury = currentYear - (currentYear % 100) + Number(year);
  return inThisCentury <= currentYear ? inThisCentury : inThisCentury - 100;
};

export type ColumnOrder =
  /** No date of the column depends on it. */
  | { readonly kind: 'no matter' }
  | { readonly kind: 'decided'; readonly order: DateOrder }
  /** Several orders fit every date, or none does: a person has to say. */
  | { readonly kind: 'undecided'; readonly fitting: readonly DateOrder[] };

/** What all dates of a column together say of their order; nothing is taken for likely. */
export const orderOfColumn = (readings: readonly DateReading[]): ColumnOrder => {
  const open = readings.flatMap((reading) => (reading.kind === 'by order' ? [reading.dates] : []));
  if (open.length === 0) return { kind: 'no matter' };
  const fitting = dateOrders.filter((order) => open.every((dates) => dates[order] !== undefined));
  const [only] = fitting;
  if (only === undefined) return { kind: 'undecided', fitting: dateOrders };
  if (fitting.length === 1) return { kind: 'decided', order: only };
  const isSame = open.every((dates) => fitting.every((order) => dates[order] === dates[only]));
  return isSame ? { kind: 'decided', order: only } : { kind: 'undecided', fitting };
};

/** The date of a reading in a column of that order; `undefined` where it is none. */
export const dateIn = (reading: DateReading, order: DateOrder | undefined): PartialDate | undefined => {
  switch (reading.kind) {
    case 'date':
      return reading.date;
    case 'by order':
      return order === undefined ? undefined : reading.dates[order];
    case 'not read':
      return undefined;
  }
};
