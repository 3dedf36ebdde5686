/** Cells in rows → headings and what stands under them. */
import { type Cell, emptyCell, type Table, type TableRow } from '../../domain/fleet-import/cell.ts';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { mostCellCharacters, mostColumns, mostRows } from './limits.ts';

/** The first row in which more than one cell is filled holds the headings; what stands above it is a title. */
export const buildTable = (
  rows: readonly (readonly Cell[])[],
  facts: Pick<Table, 'sheets' | 'sheet' | 'daysFrom1904'>,
): Table | Refusal => {
  const filled = rows.map((cells, index): TableRow => ({ number: index + 1, cells }));
  const head = filled.findIndex(({ cells }) => cells.filter(({ text }) => text !== '').length > 1);
  if (head < 0) return refusal('table-empty', {}, 'contentBase64');
  const headings = trimmedEnd(filled[head]?.cells ?? []).map(({ text }) => text);
  if (headings.length > mostColumns) return refusal('table-too-wide', { most: mostColumns }, 'contentBase64');
  const body: TableRow[] = [];
  for (const { number, cells } of filled.slice(head + 1)) {
    if (cells.every(({ text }) => text === '')) continue;
    const beyond = cells.findIndex(({ text }, column) => column >= headings.length && text !== '');
    if (beyond >= 0)
      return refusal('table-row-too-long', { row: number, most: headings.length }, 'contentBase64');
    const long = cells.findIndex(({ text }) => text.length > mostCellCharacters);
    if (long >= 0)
      return refusal(
        'table-cell-too-long',
        { row: number, column: long + 1, most: mostCellCharacters },
        'contentBase64',
      );
    body.push({ number, cells: headings.map((_, column) => cells[column] ?? emptyCell) });
  }
  if (body.length === 0) return refusal('table-no-rows', {}, 'contentBase64');
  if (body.length > mostRows) return refusal('table-too-long', { most: mostRows }, 'contentBase64');
  return { headings, rows: body, ...facts };
};

const trimmedEnd = (cells: readonly Cell[]): readonly Cell[] =>
  cells.slice(0, cells.findLastIndex(({ text }) => text !== '') + 1);

/** Without spaces at its ends, in lines that end one way, and never with half a character. */
export const cellText = (text: string): string => text.replace(/\r\n?/g, '\n').trim().toWellFormed();
