/** A table as CSV by RFC 4180, in UTF-8 with a byte order mark, as spreadsheets expect it. */
import { stringify } from 'csv-stringify/sync';
import { type DataTable, plainValue } from './data-table.ts';

/** What a spreadsheet would compute is kept from it by an apostrophe (OWASP, CSV injection). */
export const toCsv = ({ columns, rows }: DataTable): Uint8Array => {
  const lines = [columns.map(({ title }) => title), ...rows.map((row) => row.map(plainValue))];
  return Buffer.from(`\uFEFF${stringify(lines, { record_delimiter: 'windows', escape_formulas: true })}`);
};
