/** A table as it was read from a file: its headings, and cells as text. */

/** A cell that a spreadsheet keeps as a number or as a date stays one: `text` is then its digits, or an ISO 8601 date. */
export interface Cell {
  readonly kind: 'text' | 'number' | 'date';
  readonly text: string;
}

export interface TableRow {
  /** As a spreadsheet counts it: the first row of the file is 1. */
  readonly number: number;
  /** As many as there are headings. */
  readonly cells: readonly Cell[];
}

export interface Table {
  readonly headings: readonly string[];
  /** Without those in which nothing stands. */
  readonly rows: readonly TableRow[];
  /** The sheets of a workbook, and the one that was read; none of a text file. */
  readonly sheets: readonly string[];
  readonly sheet?: string;
  /** Numbers of days count from 1904, not from 1900 (ECMA-376 part 1, §18.2.28 `date1904`). */
  readonly daysFrom1904: boolean;
}

export const emptyCell: Cell = { kind: 'text', text: '' };

/** Letters and digits of any script in lower case, without accents; what stands between them is one space. */
export const plainWords = (text: string): string =>
  text
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
