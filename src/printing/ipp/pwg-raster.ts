/** A page of dots as PWG Raster, the raster format that every IPP Everywhere printer reads (PWG 5102.4-2012). */
import { mmPerInch } from '../destination.ts';
import { type Raster, toBitmap } from '../raster.ts';

/** Keywords of `pwg-raster-document-type-supported` (PWG 5102.4 §5). */
export type PwgRasterType = 'black_1' | 'sgray_8' | 'srgb_8';

/** `colorSpace`: PWG 5102.4 §4.3.1.4, Table 3. */
const types: Readonly<
  Record<PwgRasterType, { bitsPerColor: number; colors: number; colorSpace: number; white: number }>
> = {
  black_1: { bitsPerColor: 1, colors: 1, colorSpace: 3, white: 0x00 },
  sgray_8: { bitsPerColor: 8, colors: 1, colorSpace: 18, white: 0xff },
  srgb_8: { bitsPerColor: 8, colors: 3, colorSpace: 19, white: 0xff },
};

/** PWG 5102.4 §4.3, Table 1. */
const headerLength = 1_796;

const pointsPerMm = 72 / mmPerInch;

export interface PwgPage {
  /** Grey for `black_1` and `sgray_8`, sRGB for `srgb_8`. */
  readonly raster: Raster;
  readonly type: PwgRasterType;
  readonly dpi: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A file of one page. */
export const pwgRaster = (page: PwgPage): Uint8Array => {
  const { bitsPerColor, colors, white } = types[page.type];
  const { widthDots, heightDots } = page.raster;
  const bytesPerLine = Math.ceil((widthDots * bitsPerColor * colors) / 8);
  const lines = page.type === 'black_1' ? toBitmap(page.raster).bits : page.raster.samples;
  const bytesPerDot = Math.max(1, (bitsPerColor * colors) / 8);
  return Buffer.concat([
    Buffer.from('RaS2'),
    pageHeader(page, bytesPerLine),
    ...compress(lines, bytesPerLine, heightDots, bytesPerDot, white),
  ]);
};

/** Fields that are not set are zero or empty, which leaves them to the printer. Offsets: PWG 5102.4 §4.3, Table 1. */
const pageHeader = (page: PwgPage, bytesPerLine: number): Buffer => {
  const { bitsPerColor, colors, colorSpace } = types[page.type];
  const { widthDots, heightDots } = page.raster;
  const header = Buffer.alloc(headerLength);
  header.write('PwgRaster', 0, 'latin1');
  const fields: readonly (readonly [offset: number, value: number])[] = [
    [276, page.dpi],
    [280, page.dpi],
    [340, 1],
    [352, Math.round(page.widthMm * pointsPerMm)],
    [356, Math.round(page.heightMm * pointsPerMm)],
    [372, widthDots],
    [376, heightDots],
    [384, bitsPerColor],
    [388, bitsPerColor * colors],
    [392, bytesPerLine],
    [400, colorSpace],
    [420, colors],
    [452, 1],
    [456, 1],
    [460, 1],
    [472, widthDots],
    [476, heightDots],
  ];
  for (const [offset, value] of fields) header.writeUInt32BE(value, offset);
  header.write(sizeName(page), 1_732, 'latin1');
  return header;
};

/** Self-describing (PWG 5101.1 §5). */
const sizeName = ({ widthMm, heightMm }: PwgPage): string => {
  const mm = (length: number) => String(Math.round(length * 100) / 100);
  return `custom_${mm(widthMm)}x${mm(heightMm)}mm_${mm(widthMm)}x${mm(heightMm)}mm`;
};

/** PWG 5102.4 §4.4: equal lines are counted, at most 256 of them; in a line, runs of equal and of different dots, at most 128. */
const compress = (
  lines: Uint8Array,
  bytesPerLine: number,
  heightDots: number,
  bytesPerDot: number,
  white: number,
): Buffer[] => {
  const source = Buffer.from(lines.buffer, lines.byteOffset, lines.byteLength);
  const lineAt = (y: number) => source.subarray(y * bytesPerLine, (y + 1) * bytesPerLine);
  const blocks: Buffer[] = [];
  for (let y = 0; y < heightDots; ) {
    const line = lineAt(y);
    let equal = 1;
    while (equal < 256 && y + equal < heightDots && lineAt(y + equal).equals(line)) equal += 1;
    blocks.push(Buffer.of(equal - 1), compressLine(line, bytesPerDot, white));
    y += equal;
  }
  return blocks;
};

const longestRun = 128;
/** The rest of the line is white (PWG 5102.4 §4.4). */
const fillWhite = 128;

const compressLine = (line: Buffer, bytesPerDot: number, white: number): Buffer => {
  const dots = line.length / bytesPerDot;
  const dotAt = (x: number) => line.subarray(x * bytesPerDot, (x + 1) * bytesPerDot);
  const equal = (a: number, b: number) => dotAt(a).equals(dotAt(b));
  let inked = line.length;
  while (inked > 0 && line[inked - 1] === white) inked -= 1;
  const end = Math.ceil(inked / bytesPerDot);
  const parts: Buffer[] = [];
  for (let x = 0; x < end; ) {
    let run = 1;
    while (run < longestRun && x + run < end && equal(x, x + run)) run += 1;
    if (run > 1) {
      parts.push(Buffer.of(run - 1), dotAt(x));
    } else {
      while (run < longestRun && x + run < end && !(x + run + 1 < end && equal(x + run, x + run + 1)))
        run += 1;
      parts.push(
        run === 1 ? Buffer.of(0) : Buffer.of(257 - run),
        line.subarray(x * bytesPerDot, (x + run) * bytesPerDot),
      );
    }
    x += run;
  }
  if (end < dots) parts.push(Buffer.of(fillWhite));
  return Buffer.concat(parts);
};
