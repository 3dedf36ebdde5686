/** Reads a file that a person gives as a list: text with delimiters, or a workbook. Whatever is broken is a refusal that says what to do. */
import type { Table } from '../../domain/fleet-import/cell.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { decodeText } from './decode-text.ts';
import { mostFileBytes } from './limits.ts';
import { readCsv } from './read-csv.ts';
import { readWorkbook } from './read-workbook.ts';

/**
 * What the file is, its first bytes say, whatever its name: `PK` begins a zip archive (APPNOTE.TXT §4.3.7), `D0 CF 11 E0` a
 * compound file ([MS-CFB] §2.2), which is an old workbook or one with a password. Never throws.
 */
export const readTable = async (bytes: Buffer, sheet?: string): Promise<Table | Refusal> => {
  if (bytes.length === 0) return refusal('table-empty', {}, 'contentBase64');
  if (bytes.length > mostFileBytes)
    return refusal('table-file-too-large', { most: mostFileBytes / 1e6 }, 'contentBase64');
  const begins = (hex: string): boolean => bytes.toString('hex', 0, hex.length / 2) === hex;
  if (begins('504b0304')) return readWorkbook(bytes, sheet);
  if (begins('d0cf11e0')) return refusal('workbook-old', {}, 'contentBase64');
  const decoded = decodeText(bytes);
  return isRefusal(decoded) ? decoded : readCsv(decoded.text);
};
