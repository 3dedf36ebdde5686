/** A table in a text file whose values are parted by commas, semicolons or tabs (RFC 4180 and what spreadsheets make of it). */
import { CsvError } from 'csv-parse';
import { parse } from 'csv-parse/sync';
import type { Cell, Table } from '../../domain/fleet-import/cell.ts';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { buildTable, cellText } from './build-table.ts';
import { mostCells, mostRows } from './limits.ts';

const delimiters = [',', ';', '\t'] as const;
type Delimiter = (typeof delimiters)[number];

/** Of one row, quotes and all; a quote that is never closed swallows the rest of the file. */
const mostRowCharacters = 400_000;
const sampledRows = 50;

export const readCsv = (text: string): Table | Refusal => {
  const named = /^sep=([,;\t])\r?\n/i.exec(text);
  const body = named === null ? text : text.slice(named[0].length);
  const delimiter = (named?.[1] as Delimiter | undefined) ?? delimiterOf(body);
  const rows = records(body, delimiter, mostRows + sampledRows);
  if (!Array.isArray(rows)) return rows;
  const cellCount = rows.reduce((sum, row) => sum + row.length, 0);
  if (cellCount > mostCells) return refusal('table-too-large', { most: mostCells }, 'contentBase64');
  return buildTable(
    rows.map((row) => row.map((value): Cell => ({ kind: 'text', text: cellText(withoutGuard(value)) }))),
    { sheets: [], daysFrom1904: false },
  );
};

/** An apostrophe before what a spreadsheet would compute says that it is text (OWASP, CSV injection). */
const withoutGuard = (value: string): string =>
  /^'[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/.test(value) ? value.slice(1) : value;

/** A quote inside a value that is not quoted is inches. */
const records = (text: string, delimiter: Delimiter, to: number): string[][] | Refusal => {
  try {
    return parse(text, {
      delimiter,
      to,
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      max_record_size: mostRowCharacters,
    });
  } catch (error) {
    return csvFault(error);
  }
};

const csvFault = (error: unknown): Refusal => {
  if (!(error instanceof CsvError)) return refusal('table-not-read', {}, 'contentBase64');
  const row = Number(error.lines ?? 0);
  switch (error.code) {
    case 'CSV_QUOTE_NOT_CLOSED':
    case 'CSV_MAX_RECORD_SIZE':
      return refusal('table-quote-open', { row }, 'contentBase64');
    default:
      return refusal('table-row-not-read', { row }, 'contentBase64');
  }
};

/** The one by which most rows have as many values as the first; of two, the one that parts them into more. */
const delimiterOf = (text: string): Delimiter => {
  const sample = firstLines(text);
  const scored = delimiters.map((delimiter) => {
    const found = records(sample, delimiter, sampledRows);
    const counts = (Array.isArray(found) ? found : [])
      .filter((row) => row.some((value) => value.trim() !== ''))
      .map((row) => row.length);
    const most = Math.max(1, ...counts);
    const agreeing = counts.filter((count) => count === most).length / Math.max(1, counts.length);
    return { delimiter, most, score: most < 2 ? 0 : agreeing };
  });
  const [best] = scored.sort((a, b) => b.score - a.score || b.most - a.most);
  return best?.delimiter ?? ',';
};

/** Enough lines to tell by, ended where no quote is open. */
const firstLines = (text: string): string => {
  let quotes = 0;
  let lines = 0;
  for (let index = 0; index < text.length && index < mostRowCharacters; index += 1) {
    const character = text.charAt(index);
    if (character === '"') quotes += 1;
    else if (character === '\n' && quotes % 2 === 0) lines += 1;
    if (lines === sampledRows) return text.slice(0, index);
  }
  return text.slice(0, mostRowCharacters);
};
