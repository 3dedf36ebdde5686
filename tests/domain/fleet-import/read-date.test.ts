/** Dates of lists in three orders, and what a column decides. */
import { describe, expect, test } from 'vitest';
import type { Cell } from '../../../src/domain/fleet-import/cell.ts';
import {
  type DateRules,
  dateIn,
  orderOfColumn,
  readDate,
} from '../../../src/domain/fleet-import/read-date.ts';
import { valueWords } from '../../support/import-words.ts';

const rules: DateRules = { currentYear: 2026, daysFrom1904: false, words: valueWords };
const textCell = (text: string): Cell => ({ kind: 'text', text });
const read = (text: string) => readDate(textCell(text), rules);

/** ISO 8601 for the year first; the rest is how English and Spanish write dates (common practice, no source). */
test.each([
  ['2024-03-05', '2024-03-05'],
  ['2024/3/5', '2024-03-05'],
  ['2024.03.05', '2024-03-05'],
  ['20240305', '2024-03-05'],
  ['2024-03-05T00:00:00', '2024-03-05'],
  ['2024-03-05 00:00:00.000', '2024-03-05'],
  ['2024-03', '2024-03'],
  ['03/2024', '2024-03'],
  ['2024', '2024'],
  ['5 March 2024', '2024-03-05'],
  ['March 5, 2024', '2024-03-05'],
  ['5th of March 2024', '2024-03-05'],
  ['5-Mar-24', '2024-03-05'],
  ['05-mar.-2024', '2024-03-05'],
  ['5 de marzo de 2024', '2024-03-05'],
  ['5 MARZO 2024', '2024-03-05'],
  ['15 setiembre 2024', '2024-09-15'],
  ['1 ene. 2024', '2024-01-01'],
  ['31 dic 2024', '2024-12-31'],
  ['Mar 2024', '2024-03'],
  ['marzo de 2024', '2024-03'],
  ['2024 March 5', '2024-03-05'],
  ['29-02-2024 0:00', undefined],
] as const)('%j alone is %j', (text, date) => {
  expect(dateIn(read(text), undefined)).toBe(date);
});

test.each([
  ['05/03/2024', { dmy: '2024-03-05', mdy: '2024-05-03' }],
  ['25/03/2024', { dmy: '2024-03-25' }],
  ['03/25/2024', { mdy: '2024-03-25' }],
  ['29-02-2024 0:00', { dmy: '2024-02-29' }],
  ['05.03.24', { dmy: '2024-03-05', mdy: '2024-05-03', ymd: '2005-03-24' }],
  ['24/03/05', { dmy: '2005-03-24', ymd: '2024-03-05' }],
  // A year of two digits is the latest that is not to come: in 2026, 26 is 2026 and 27 is 1927, before any device in use.
  ['31/12/26', { dmy: '2026-12-31' }],
  ['99/12/31', { ymd: '1999-12-31' }],
] as const)('%j is a date by order: %j', (text, dates) => {
  expect(read(text)).toEqual({ kind: 'by order', dates });
});

test.each([
  '30/02/2024',
  '2023-02-29',
  '32/01/2024',
  '13/13/2024',
  '2024-13',
  '0000-01-01',
  '1949-12-31',
  'March',
  '5 March April 2024',
  'soon',
  '1/2/3/4',
  '12',
  '5 Brumaire 2024',
])('%j is no date', (text) => {
  expect(read(text)).toEqual({ kind: 'not read' });
});

/**
 * ECMA-376 part 1, §18.17.4.1: in the 1900 date system 1 is 1 January 1900 and there is a 29 February 1900 that never was;
 * 45356 is 5 March 2024 (as spreadsheets show it). In the 1904 system 0 is 1 January 1904, so that it is 1462 less.
 */
describe('a number of a spreadsheet', () => {
  test.each([
    ['45356', false, '2024-03-05'],
    ['43894', true, '2024-03-05'],
    ['45356.75', false, '2024-03-05'],
    ['2019', false, '2019'],
    ['20240305', false, '2024-03-05'],
    ['36526', false, '2000-01-01'],
  ] as const)('%j, days from 1904: %s, is %j', (text, daysFrom1904, date) => {
    const cell: Cell = { kind: 'number', text };
    expect(dateIn(readDate(cell, { ...rules, daysFrom1904 }), undefined)).toBe(date);
  });

  test.each(['1', '2500', '1e9', 'NaN', '-5'])('%j is no day of our time', (text) => {
    expect(readDate({ kind: 'number', text }, rules)).toEqual({ kind: 'not read' });
  });

  test('that the spreadsheet calls a date is that date', () => {
    expect(dateIn(readDate({ kind: 'date', text: '2024-03-05' }, rules), undefined)).toBe('2024-03-05');
  });
});

describe('the order of a column', () => {
  const orderOf = (...texts: readonly string[]) => orderOfColumn(texts.map(read));

  test('is decided by one value that fits only one order', () => {
    expect(orderOf('05/03/2024', '25/03/2024')).toEqual({ kind: 'decided', order: 'dmy' });
    expect(orderOf('05/03/2024', '03/25/2024')).toEqual({ kind: 'decided', order: 'mdy' });
    expect(orderOf('24/03/05', '99/12/31')).toEqual({ kind: 'decided', order: 'ymd' });
  });

  test('is asked where several orders fit every value, however many there are', () => {
    const texts = Array.from({ length: 200 }, (_, index) => `0${(index % 9) + 1}/1${index % 3}/2023`);
    expect(orderOf(...texts)).toEqual({ kind: 'undecided', fitting: ['dmy', 'mdy'] });
  });

  test('is asked where no order fits every value', () => {
    expect(orderOf('25/03/2024', '03/25/2024')).toEqual({
      kind: 'undecided',
      fitting: ['dmy', 'mdy', 'ymd'],
    });
  });

  test('does not matter where every value says its month, or where all orders give the same dates', () => {
    expect(orderOf('2024-03-05', '5 March 2024')).toEqual({ kind: 'no matter' });
    expect(orderOf('05/05/2024', '07/07/2023').kind).toBe('decided');
  });
});
