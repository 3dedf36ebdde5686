/**
 * The icon of the product as each system wants it, from our one drawing.
 *
 * ICO: a directory of entries with a PNG each, as Windows Vista and later read it (Microsoft, "Icons", and the ICONDIR structure of
 * the Win32 documentation). ICNS: a list of elements, each a type of four letters, its length with the eight bytes before it, and a
 * PNG; the letters are those of Apple's `IconStorage.h` for pictures of so many dots.
 */
import sharp from 'sharp';

/** A square picture of so many dots a side. */
export interface IconPicture {
  readonly dots: number;
  readonly png: Buffer;
}

/** Dots of the drawing for one inch at its own size, in the reckoning of the library. */
const usualDensity = 72;
const drawingDots = 512;

export const drawIcon = async (svg: Buffer, dots: number): Promise<IconPicture> => ({
  dots,
  png: await sharp(svg, { density: Math.max(1, (usualDensity * dots * 2) / drawingDots) })
    .resize(dots, dots)
    .png({ compressionLevel: 9 })
    .toBuffer(),
});

export const icoDots = [16, 20, 24, 32, 40, 48, 64, 128, 256] as const;

const headBytes = 6;
const entryBytes = 16;
const bitsOfPixel = 32;

export const icoOf = (pictures: readonly IconPicture[]): Buffer => {
  const head = Buffer.alloc(headBytes + entryBytes * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let offset = head.length;
  for (const [index, { dots, png }] of pictures.entries()) {
    const entry = headBytes + entryBytes * index;
    /** A byte holds no 256; 0 stands for it. */
    head.writeUInt8(dots % 256, entry);
    head.writeUInt8(dots % 256, entry + 1);
    head.writeUInt16LE(1, entry + 4);
    head.writeUInt16LE(bitsOfPixel, entry + 6);
    head.writeUInt32LE(png.length, entry + 8);
    head.writeUInt32LE(offset, entry + 12);
    offset += png.length;
  }
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
};

/** For each type how many dots it has; the same number occurs twice, once for a screen of double density. */
export const icnsTypes = {
  icp4: 16,
  icp5: 32,
  ic07: 128,
  ic08: 256,
  ic09: 512,
  ic10: 1024,
  ic11: 32,
  ic12: 64,
  ic13: 256,
  ic14: 512,
} as const;

const elementHeadBytes = 8;

export const icnsOf = (pictures: readonly IconPicture[]): Buffer => {
  const elements = Object.entries(icnsTypes).flatMap(([type, dots]) => {
    const png = pictures.find((picture) => picture.dots === dots)?.png;
    return png === undefined ? [] : [element(type, png)];
  });
  return element('icns', Buffer.concat(elements));
};

const element = (type: string, content: Buffer): Buffer => {
  const head = Buffer.alloc(elementHeadBytes);
  head.write(type, 'latin1');
  head.writeUInt32BE(elementHeadBytes + content.length, 4);
  return Buffer.concat([head, content]);
};

export const linuxDots = [16, 24, 32, 48, 64, 128, 256, 512] as const;
/** The icon of our windows. */
export const windowDots = 256;
