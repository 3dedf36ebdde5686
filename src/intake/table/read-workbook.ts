/** A table in a workbook of spreadsheets (XLSX, ECMA-376): one sheet of it, within limits. */
import { readSheet } from 'read-excel-file/node';
import { type Cell, emptyCell, type Table } from '../../domain/fleet-import/cell.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { buildTable, cellText } from './build-table.ts';
import { mostCells, mostRows } from './limits.ts';
import { packWorkbook, unpackWorkbook, WorkbookTooLarge } from './unpack-workbook.ts';

/** A number as the workbook writes it, so that a long serial number keeps its digits. */
interface WrittenNumber {
  readonly digits: string;
}

/** Reads the sheet of that name, or the first one. */
export const readWorkbook = async (bytes: Buffer, sheet: string | undefined): Promise<Table | Refusal> => {
  try {
    const parts = await unpackWorkbook(bytes);
    const workbook = parts.get('xl/workbook.xml')?.toString('utf8') ?? '';
    const fault = [...parts].map(([path, part]) => faultOfPart(path, part)).find(isRefusal);
    if (fault !== undefined) return fault;
    const sheets = sheetNames(workbook);
    const chosen = sheet ?? sheets[0];
    if (chosen === undefined) return notRead();
    if (!sheets.includes(chosen))
      return refusal('table-sheet-unknown', { sheet: chosen, sheets: sheets.join('; ') }, 'sheet');
    const rows: unknown = await readSheet<WrittenNumber>(
      await packWorkbook(parts),
      sheets.indexOf(chosen) + 1,
      {
        parseNumber: (digits) => ({ digits }),
      },
    );
    if (!Array.isArray(rows)) return notRead();
    const cells = rows.map((row) => (Array.isArray(row) ? row.map(cellOf) : []));
    return buildTable(cells, {
      sheets,
      sheet: chosen,
      daysFrom1904: /\bdate1904\s*=\s*["'](1|true)["']/.test(workbook),
    });
  } catch (error) {
    return error instanceof WorkbookTooLarge
      ? refusal('table-too-large', { most: mostCells }, 'contentBase64')
      : notRead();
  }
};

const notRead = (): Refusal => refusal('workbook-not-read', {}, 'contentBase64');

/** No part of a workbook has a document type; a sheet has no cell so far out that reading it would fill the memory. */
const faultOfPart = (path: string, part: Buffer): Refusal | undefined => {
  const text = part.toString('latin1');
  if (/<!(DOCTYPE|ENTITY)/i.test(text)) return notRead();
  if (!/<(?:\w+:)?sheetData\b/.test(text)) return undefined;
  let rows = 0;
  let columns = 0;
  let cells = 0;
  for (const [, , at = ''] of text.matchAll(/<(?:\w+:)?(?:c|row)\b[^>]*?\sr\s*=\s*(["'])(.*?)\1/g)) {
    const found = /^([A-Z]{0,3})(\d{1,7})$/.exec(at);
    if (found === null) return refusal('workbook-not-read', {}, path);
    rows = Math.max(rows, Number(found[2]));
    columns = Math.max(columns, columnNumber(found[1] ?? ''));
    cells += 1;
  }
  if (rows > mostRows * 2) return refusal('table-too-long', { most: mostRows }, 'contentBase64');
  return rows * columns > mostCells || cells > mostCells
    ? refusal('table-too-large', { most: mostCells }, 'contentBase64')
    : undefined;
};

/** `A` is 1, `AA` 27. */
const columnNumber = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

const sheetNames = (workbook: string): readonly string[] =>
  [...workbook.matchAll(/<(?:\w+:)?sheet\b[^>]*?\sname\s*=\s*(["'])(.*?)\1/g)].map(([, , name = '']) =>
    name
      .replace(/&(amp|lt|gt|quot|apos);/g, (whole, entity: string) => entities[entity] ?? whole)
      .toWellFormed(),
  );

const cellOf = (value: unknown): Cell => {
  if (typeof value === 'string') return { kind: 'text', text: cellText(value) };
  if (typeof value === 'boolean') return { kind: 'text', text: String(value) };
  if (value instanceof Date) {
    const isDay =
      !Number.isNaN(value.getTime()) && value.getUTCFullYear() > 0 && value.getUTCFullYear() < 10_000;
    return isDay
      ? { kind: 'date', text: value.toISOString().slice(0, 10) }
      : { kind: 'text', text: String(value) };
  }
  if (typeof value === 'object' && value !== null && 'digits' in value)
    return { kind: 'number', text: cellText(numberText(String(value.digits))) };
  return emptyCell;
};

/** `6.0960000000000001` is what is left of 6.096 in binary: at most 15 digits are kept (ECMA-376 spreadsheets). */
const numberText = (digits: string): string => {
  const value = Number(digits);
  if (!Number.isFinite(value) || Number.isInteger(value)) return digits;
  return String(Number(value.toPrecision(15)));
};
