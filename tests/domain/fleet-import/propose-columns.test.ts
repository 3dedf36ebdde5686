/** What a column is proposed to mean. */
import { expect, test } from 'vitest';
import type { Table } from '../../../src/domain/fleet-import/cell.ts';
import { proposeColumns } from '../../../src/domain/fleet-import/propose-columns.ts';
import { columnWords, valueWords } from '../../support/import-words.ts';

const tableOf = (headings: readonly string[], ...rows: readonly (readonly string[])[]): Table => ({
  headings,
  rows: rows.map((texts, index) => ({
    number: index + 2,
    cells: texts.map((text) => ({ kind: 'text', text })),
  })),
  sheets: [],
  daysFrom1904: false,
});
const proposed = (table: Table) =>
  proposeColumns(table, columnWords, valueWords).map(({ meaning, because, unit }) => [
    meaning,
    because,
    unit,
  ]);

test('headings in English and Spanish are understood, accents, case and marks aside, with the unit they name', () => {
  expect(
    proposed(
      tableOf([
        'MANUFACTURER',
        'Modelo',
        'Nº de serie',
        'Fecha de fabricación',
        'Longitud (pies)',
        'serial_no',
        'Último',
        'lastInspectionDate',
        'Diámetro [mm]',
        'Capacity (lb)',
      ]),
    ),
  ).toEqual([
    ['manufacturer', 'heading', undefined],
    ['model', 'heading', undefined],
    ['serial', 'heading', undefined],
    ['dateOfManufacture', 'heading', undefined],
    ['ratedLength', 'heading', 'ft'],
    ['ignore', 'nothing', undefined],
    ['ignore', 'nothing', undefined],
    ['inspectedOn', 'heading', undefined],
    ['lifelineDiameter', 'heading', 'mm'],
    ['capacity', 'heading', 'lb'],
  ]);
});

test('a meaning stands once, but several columns can hold codes', () => {
  expect(
    proposed(tableOf(['Serial', 'Serial number', 'Barcode', 'Asset no.', 'RFID'])).map(
      ([meaning]) => meaning,
    ),
  ).toEqual(['serial', 'ignore', 'otherCode', 'otherCode', 'rfidCode']);
});

test('contents are a guess, and only where nothing else looks like them', () => {
  const table = tableOf(['A', 'B', 'C'], ['GJQ81-T5WX2', 'Inox', '6 m'], ['CFYNM5TGM2', 'galv.', '10 m']);
  expect(proposed(table)).toEqual([
    ['benchId', 'contents', undefined],
    ['lifelineMaterial', 'contents', undefined],
    ['ignore', 'nothing', undefined],
  ]);
});

test('no word stands for two meanings in one language', () => {
  for (const language of ['en', 'es'] as const) {
    const words = Object.values(columnWords).flatMap((lists) => lists[language]);
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([]);
  }
});
