/** Files of lists: encodings, delimiters, quotes, workbooks, and what is broken. */

import { buffer } from 'node:stream/consumers';
import { describe, expect, test } from 'vitest';
import writeExcel from 'write-excel-file/node';
import { ZipFile } from 'yazl';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { readTable } from '../../../src/intake/table/read-table.ts';

const readOk = async (bytes: Buffer, sheet?: string) => {
  const table = await readTable(bytes, sheet);
  if (isRefusal(table)) throw new Error(table.code);
  return table;
};
const codeOf = async (bytes: Buffer, sheet?: string) => {
  const table = await readTable(bytes, sheet);
  return isRefusal(table) ? table.code : 'read';
};
const textsOf = async (bytes: Buffer) =>
  (await readOk(bytes)).rows.map(({ number, cells }) => [number, ...cells.map(({ text }) => text)]);

const text = 'Número;Año;Longitud\nA-1;2019;6,10 m\n«É»;2020;"3;5 m"\n';
const utf16be = (value: string) => Buffer.from(value, 'utf16le').swap16();

/** Byte order marks: Unicode Standard §23.8; Windows-1252 bytes by hand from the WHATWG Encoding Standard's index. */
describe('the encoding of a text', () => {
  test.each([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with its mark', Buffer.from(`\ufeff${text}`)],
    ['UTF-16 LE with its mark', Buffer.from(`\ufeff${text}`, 'utf16le')],
    ['UTF-16 BE with its mark', utf16be(`\ufeff${text}`)],
    ['UTF-16 LE without', Buffer.from(text, 'utf16le')],
    ['UTF-16 BE without', utf16be(text)],
    ['Windows-1252', Buffer.from(text, 'latin1')],
  ])('is found: %s', async (_name, bytes) => {
    expect((await readOk(bytes)).headings).toEqual(['Número', 'Año', 'Longitud']);
    expect(await textsOf(bytes)).toEqual([
      [2, 'A-1', '2019', '6,10 m'],
      [3, '«É»', '2020', '3;5 m'],
    ]);
  });

  test('Windows-1252 has its own signs where ISO 8859-1 has none', async () => {
    const bytes = Buffer.concat([
      Buffer.from('Maker;Price\nA;20 '),
      Buffer.from([0x80, 0x93, 0x94]),
      Buffer.from('\n'),
    ]);
    expect(await textsOf(bytes)).toEqual([[2, 'A', '20 €“”']]);
  });
});

/** RFC 4180; the semicolon is what spreadsheets write where the comma is the decimal mark (common practice, no source). */
describe('a text with delimiters', () => {
  test.each([
    ['comma', 'A,B\n"1,5",2\n', [[2, '1,5', '2']]],
    ['semicolon', 'A;B\n1,5;2,5\n', [[2, '1,5', '2,5']]],
    ['tab', 'A\tB\n1,5\t2;5\n', [[2, '1,5', '2;5']]],
    ['named by the first line', 'sep=;\nA;B\n1;2\n', [[2, '1', '2']]],
    ['lines of Windows', 'A,B\r\n1,2\r\n', [[2, '1', '2']]],
    ['a line break and a quote inside', 'A,B\n"1\n2","say ""x"""\n', [[2, '1\n2', 'say "x"']]],
    ['inches without quotes around', 'A,B\n3/16",2\n', [[2, '3/16"', '2']]],
    [
      'empty lines and a title',
      'Fleet\n\nA,B\n\n1,2\n,\n3,4',
      [
        [5, '1', '2'],
        [7, '3', '4'],
      ],
    ],
    ['rows that are too short', 'A,B,C\n1\n', [[2, '1', '', '']]],
    ['the guard of a formula', "A,B\n'=1,'x\n", [[2, '=1', "'x"]]],
  ])('is read: %s', async (_name, written, rows) => {
    expect(await textsOf(Buffer.from(written))).toEqual(rows);
  });
});

describe('what is broken', () => {
  test.each([
    ['nothing', '', 'table-empty'],
    ['one column of words', 'hello\nworld\n', 'table-empty'],
    ['headings alone', 'A,B\n', 'table-no-rows'],
    ['a quote that stays open', 'A,B\n1,"2\n3,4\n', 'table-quote-open'],
    ['more cells than headings', 'A,B\n1,2,3\n', 'table-row-too-long'],
    ['control characters', 'A,B\n1,\u0001\n', 'table-not-text'],
    ['a cell without end', `A,B\n1,${'x'.repeat(3000)}\n`, 'table-cell-too-long'],
    ['too many columns', `${'A,'.repeat(300)}A\n1,2\n`, 'table-too-wide'],
    ['too many rows', `A,B\n${'1,2\n'.repeat(100_001)}`, 'table-too-long'],
  ])('is said in a sentence: %s', async (_name, written, code) => {
    expect(await codeOf(Buffer.from(written))).toBe(code);
  });

  test.each([
    ['an old workbook', Buffer.from('d0cf11e0a1b11ae100000000', 'hex'), 'workbook-old'],
    ['a picture', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'), 'table-not-text'],
    ['half an archive', Buffer.from('504b03041400000000', 'hex'), 'workbook-not-read'],
    ['a file beyond the limit', Buffer.alloc(20_000_001, 65), 'table-file-too-large'],
  ])('is said of %s', async (_name, bytes, code) => {
    expect(await codeOf(bytes)).toBe(code);
  });
});

const workbookOf = async (parts: Readonly<Record<string, string | Buffer>>) => {
  const archive = new ZipFile();
  for (const [path, part] of Object.entries(parts)) archive.addBuffer(Buffer.from(part), path);
  archive.end();
  return buffer(archive.outputStream);
};

/** The smallest workbook that ECMA-376 part 1 §12 allows, around the rows of one sheet. */
const workbookWith = (sheetData: string, workbookPr = '') =>
  workbookOf({
    '[Content_Types].xml': '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    'xl/workbook.xml': `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships">${workbookPr}<sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels':
      '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${sheetData}</sheetData></worksheet>`,
  });
const word = (at: string, value: string) => `<c r="${at}" t="inlineStr"><is><t>${value}</t></is></c>`;
const head = `<row r="1">${word('A1', 'Serial')}${word('B1', 'Made')}</row>`;

describe('a workbook', () => {
  test('is read by type: texts, numbers with their digits, days, yes and no', async () => {
    const made = await writeExcel([
      [{ value: 'Serial' }, { value: 'Made' }, { value: 'Length' }, { value: 'Fitted' }],
      [
        { value: '0012' },
        { value: new Date('2024-03-05T00:00:00Z'), type: Date, format: 'dd/mm/yyyy' },
        { value: 6.1, type: Number },
        { value: true, type: Boolean },
      ],
    ]).toBuffer();
    const { rows, sheets, sheet } = await readOk(made);
    expect(sheets).toEqual([sheet]);
    expect(rows).toEqual([
      {
        number: 2,
        cells: [
          { kind: 'text', text: '0012' },
          { kind: 'date', text: '2024-03-05' },
          { kind: 'number', text: '6.1' },
          { kind: 'text', text: 'true' },
        ],
      },
    ]);
  });

  test('is read on the sheet that is named, and says which there are', async () => {
    const sheetOf = (name: string) => ({
      sheet: name,
      data: [
        [{ value: 'A' }, { value: 'B' }],
        [{ value: name }, { value: '2' }],
      ],
    });
    const made = await writeExcel([sheetOf('One'), sheetOf('Two & more')]).toBuffer();
    const table = await readOk(made, 'Two & more');
    expect(table.sheets).toEqual(['One', 'Two & more']);
    expect(table.rows[0]!.cells[0]!.text).toBe('Two & more');
    expect(await codeOf(made, 'Three')).toBe('table-sheet-unknown');
  });

  test('keeps the digits of a number, and says from when its days count', async () => {
    const bytes = await workbookWith(
      `${head}<row r="2"><c r="A2"><v>12345678901234567890</v></c><c r="B2"><v>43894</v></c></row>`,
      '<workbookPr date1904="1"/>',
    );
    const table = await readOk(bytes);
    expect(table.daysFrom1904).toBe(true);
    expect(table.rows[0]!.cells).toEqual([
      { kind: 'number', text: '12345678901234567890' },
      { kind: 'number', text: '43894' },
    ]);
  });

  test.each([
    ['a cell far out', `${head}<row r="1048576">${word('XFD1048576', 'x')}</row>`, 'table-too-long'],
    ['a wide and long sheet', `${head}<row r="90000">${word('ZZ90000', 'x')}</row>`, 'table-too-large'],
    ['a place that is none', `${head}<row r="2">${word('A99999999999', 'x')}</row>`, 'workbook-not-read'],
  ])('cannot fill the memory: %s', async (_name, sheetData, code) => {
    expect(await codeOf(await workbookWith(sheetData))).toBe(code);
  });

  test('cannot fill the memory: parts that unpack to far more than the file, or that declare entities', async () => {
    const bomb = await workbookOf({ 'xl/workbook.xml': 'x', 'xl/a.xml': Buffer.alloc(130_000_000, 32) });
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(await codeOf(bomb)).toBe('table-too-large');
    const entities = await workbookOf({ 'xl/workbook.xml': '<!DOCTYPE x [<!ENTITY a "aa">]><workbook/>' });
    expect(await codeOf(entities)).toBe('workbook-not-read');
  });
});
