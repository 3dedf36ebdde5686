/** A table as data, from which a PDF, a CSV file and a workbook are made, so that all three say the same. */
import type { ReportWords, Told } from './report-words.ts';
import type { Strip } from './strip.ts';
import { cell, table } from './table.ts';

/** A date is a calendar date in ISO 8601; words are in each language of the report. */
export type DataValue = string | number | Told | { readonly date: string };

export interface DataColumn {
  readonly title: string;
  /** Of the width of a page, beside the shares of the others. */
  readonly share: number;
}

export interface DataTable {
  readonly title: string;
  readonly columns: readonly DataColumn[];
  readonly rows: readonly (readonly DataValue[])[];
}

export const tableStrip = ({ columns, rows }: DataTable, words: ReportWords, widthMm: number): Strip =>
  table(
    columns,
    rows.map((row) => row.map((value) => cell(toldValue(value, words)))),
    widthMm,
  );

/** On paper a dash says that nothing is missing from a cell. */
const toldValue = (value: DataValue, words: ReportWords): Told => {
  if (typeof value === 'string' || typeof value === 'number') return [value === '' ? '–' : String(value)];
  return 'date' in value ? words.told(words.date(value.date)) : value;
};

/** In one line, with dates as ISO 8601 writes them. */
export const plainValue = (value: DataValue): string | number => {
  if (typeof value === 'string' || typeof value === 'number') return value;
  return 'date' in value ? value.date : value.join(' / ');
};
