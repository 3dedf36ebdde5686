/** A table as a workbook (.xlsx): texts are texts, whatever they begin with, and dates are dates. */
import writeWorkbook, { type Cell, type SheetData } from 'write-excel-file/node';
import { type DataTable, type DataValue, plainValue } from './data-table.ts';

/** A sheet's name has at most 31 characters and none of these (Excel specifications and limits, from memory). */
const sheetName = (title: string): string => title.replace(/[\\/?*[\]:]/g, '-').slice(0, 31);

export const toWorkbook = async ({ title, columns, rows }: DataTable): Promise<Uint8Array> => {
  const head = columns.map((column) => ({ value: column.title, type: String, fontWeight: 'bold' as const }));
  const data: SheetData = [head, ...rows.map((row) => row.map(cellOf))];
  return writeWorkbook(data, {
    sheet: sheetName(title),
    stickyRowsCount: 1,
    columns: columns.map(({ share }) => ({ width: Math.round(share * 4) })),
  }).toBuffer();
};

const cellOf = (value: DataValue): Cell => {
  if (typeof value === 'object' && 'date' in value && /^\d{4}-\d\d-\d\d$/.test(value.date))
    return { value: new Date(`${value.date}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
  const plain = plainValue(value);
  if (plain === '') return null;
  return typeof plain === 'number' ? { value: plain, type: Number } : { value: plain, type: String };
};
