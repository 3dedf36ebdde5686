/** A page of dots in the common language of label printers, as graphics alone: what comes out is the raster, dot for dot. */
import { deflateSync } from 'node:zlib';
import type { ThermalSettings } from '../destination-settings.ts';
import type { Bitmap } from '../raster.ts';

/** Sources of all commands: "ZPL II Programming Guide", commands ^GF, ^LL, ^LH, ^PQ, ^PR, ^PW, ~SD, and "ZB64 Encoding and Compression". */
export interface LabelSetting extends Pick<ThermalSettings, 'compression'> {
  readonly copies: number;
  /** 0 to 30, ~SD. */
  readonly darkness?: number | undefined;
  /** Inches per second, ^PR. */
  readonly speedInchesPerSecond?: number | undefined;
}

/** Bytes that one ^GF may fill: 1 to 99,999. A larger page goes as bands, one under the other. */
const mostBytesOfGraphic = 99_999;

export const labelOf = (bitmap: Bitmap, setting: LabelSetting): string => {
  const { darkness, speedInchesPerSecond, copies } = setting;
  return [
    darkness === undefined ? '' : `~SD${String(darkness).padStart(2, '0')}`,
    '^XA',
    `^PW${bitmap.widthDots}`,
    `^LL${bitmap.heightDots}`,
    '^LH0,0',
    speedInchesPerSecond === undefined ? '' : `^PR${speedInchesPerSecond}`,
    ...bandsOf(bitmap).map((band) => graphicField(band, bitmap.bytesPerRow, setting.compression)),
    `^PQ${copies}`,
    '^XZ',
  ]
    .filter((part) => part !== '')
    .join('\n');
};

interface Band {
  readonly topDots: number;
  readonly bits: Uint8Array;
}

const bandsOf = ({ heightDots, bytesPerRow, bits }: Bitmap): Band[] => {
  const rows = Math.floor(mostBytesOfGraphic / bytesPerRow);
  const bands = Math.ceil(heightDots / rows);
  return Array.from({ length: bands }, (_, index) => ({
    topDots: index * rows,
    bits: bits.subarray(index * rows * bytesPerRow, (index + 1) * rows * bytesPerRow),
  }));
};

const graphicField = (
  { topDots, bits }: Band,
  bytesPerRow: number,
  compression: LabelSetting['compression'],
): string => {
  const data = compression === 'z64' ? z64(bits) : runLength(bits, bytesPerRow);
  return `^FO0,${topDots}^GFA,${bits.length},${bits.length},${bytesPerRow},${data}^FS`;
};

/** `:Z64:`, the deflated bytes in Base64, and the CRC of that text. */
const z64 = (bits: Uint8Array): string => {
  const encoded = deflateSync(bits, { level: 9 }).toString('base64');
  return `:Z64:${encoded}:${crc16(encoded).toString(16).toUpperCase().padStart(4, '0')}`;
};

/** CRC-16 with the polynomial 0x1021 of CCITT, begun at 0, bits not reflected. */
export const crc16 = (text: string): number => {
  let crc = 0;
  for (const byte of Buffer.from(text, 'latin1')) {
    crc ^= byte << 8;
    for (let bit = 0; bit < 8; bit += 1) crc = ((crc << 1) ^ (crc & 0x8000 ? 0x1021 : 0)) & 0xffff;
  }
  return crc;
};

/**
 * Hexadecimal digits with repeat counts: G to Y are 1 to 19, g to z are 20 to 400 in steps of 20; a comma ends a row with
 * zeros, an exclamation mark with ones, and a colon repeats the row above.
 */
export const runLength = (bits: Uint8Array, bytesPerRow: number): string => {
  const rows: string[] = [];
  let above: string | undefined;
  for (let at = 0; at < bits.length; at += bytesPerRow) {
    const row = Buffer.from(bits.subarray(at, at + bytesPerRow))
      .toString('hex')
      .toUpperCase();
    rows.push(row === above ? ':' : compressRow(row));
    above = row;
  }
  return rows.join('');
};

const compressRow = (row: string): string => {
  const [, body = '', end = ''] = /^(.*?)(0*|F*)$/.exec(row) ?? [];
  const tail = end === '' ? '' : end.startsWith('0') ? ',' : '!';
  const runs = body.replace(/(.)\1+/g, (run, digit: string) => `${countOf(run.length)}${digit}`);
  return `${runs}${tail}`;
};

const countOf = (count: number): string => {
  const full = Math.floor(count / 400);
  const rest = count % 400;
  const twenties = Math.floor(rest / 20);
  const ones = rest % 20;
  return [
    'z'.repeat(full),
    twenties === 0 ? '' : String.fromCharCode('f'.charCodeAt(0) + twenties),
    ones === 0 ? '' : String.fromCharCode('F'.charCodeAt(0) + ones),
  ].join('');
};

/** Asks how the printer is. */
export const hostStatusRequest = '~HS';

/** Takes back everything that the printer holds and has not printed. */
export const cancelAll = '~JA';
