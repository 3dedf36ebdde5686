/** A manufacturer's notice from a file: JSON as `notice.record` takes it, or a table with one group of devices in each row. */
import type { Table, TableRow } from '../domain/fleet-import/cell.ts';
import { type NoticeText, noticeTextSchema } from '../domain/recall/notice.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { decodeText } from './table/decode-text.ts';
import { readTable } from './table/read-table.ts';

/** Each column by its headings, in both languages; letters and digits count. */
const headings = {
  manufacturer: ['manufacturer', 'maker', 'fabricante'],
  reference: ['reference', 'notice', 'referencia', 'aviso'],
  issuedOn: ['issuedon', 'issued', 'emitidoel', 'emitido'],
  models: ['models', 'model', 'modelos', 'modelo'],
  serials: ['serials', 'serial', 'serialnumbers', 'numerosdeserie', 'serie'],
  madeFrom: ['madefrom', 'fabricadodesde'],
  madeUntil: ['madeuntil', 'fabricadohasta'],
  instructionEn: ['instructionen', 'instruction'],
  instructionEs: ['instructiones', 'instruccion'],
} as const;
type Column = keyof typeof headings;

/** Never throws; what does not fit is named. */
export const readNoticeFile = async (bytes: Buffer): Promise<{ readonly text: NoticeText } | Refusal> => {
  const decoded = decodeText(bytes);
  if (!isRefusal(decoded) && decoded.text.trimStart().startsWith('{')) return fromJson(decoded.text);
  const table = await readTable(bytes);
  return isRefusal(table) ? table : checked(fromTable(table));
};

const fromJson = (text: string): { readonly text: NoticeText } | Refusal => {
  try {
    return checked(JSON.parse(text));
  } catch {
    return refusal('notice-file-not-read', {}, 'contentBase64');
  }
};

const checked = (given: unknown): { readonly text: NoticeText } | Refusal => {
  const read = noticeTextSchema.safeParse(given);
  if (read.success) return { text: read.data };
  const [issue] = read.error.issues;
  return refusal('notice-file-lacks', { what: issue?.path.join('.') || '—' }, 'contentBase64');
};

/** What holds for the whole notice stands in the first row that says it. */
const fromTable = (table: Table): unknown => {
  const columns = new Map(
    (Object.keys(headings) as Column[]).map((column) => [
      column,
      table.headings.findIndex((heading) => headings[column].some((known) => known === plain(heading))),
    ]),
  );
  const cell = (row: TableRow, column: Column): string => row.cells[columns.get(column) ?? -1]?.text ?? '';
  const first = (column: Column): string | undefined =>
    table.rows.map((row) => cell(row, column)).find((text) => text !== '');
  const [en, es] = [first('instructionEn'), first('instructionEs')];
  return {
    manufacturer: first('manufacturer'),
    reference: first('reference'),
    issuedOn: first('issuedOn'),
    instruction: { ...(en === undefined ? {} : { en }), ...(es === undefined ? {} : { es }) },
    affected: table.rows.map((row) => ({
      models: list(cell(row, 'models')),
      serials: list(cell(row, 'serials')),
      ...madeOf(cell(row, 'madeFrom'), cell(row, 'madeUntil')),
    })),
  };
};

const plain = (heading: string): string =>
  heading
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/** Several in one cell are parted by semicolons or lines. */
const list = (text: string): string[] =>
  text
    .split(/[;\n]/)
    .map((each) => each.trim())
    .filter((each) => each !== '');

const madeOf = (from: string, until: string): object =>
  from === '' && until === ''
    ? {}
    : { made: { ...(from === '' ? {} : { from }), ...(until === '' ? {} : { until }) } };
