/** Which files are pictures that can be read here, and what is said of the others. */
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { faultOf } from '../../../renderer/camera/picture-file.ts';

const picture = sharp({ create: { width: 8, height: 8, channels: 3, background: '#888' } });
const fileOf = (bytes: Uint8Array | string) =>
  new Blob([typeof bytes === 'string' ? bytes : Uint8Array.from(bytes)]);

/** A file type box as a phone's camera writes it: length, `ftyp`, the brand, and brands that it is compatible with. */
const boxOf = (brand: string) => fileOf(`\x00\x00\x00\x18ftyp${brand}\x00\x00\x00\x00mif1heic`);

describe('a file that is given as a picture', () => {
  test.each(['png', 'jpeg', 'webp'] as const)('is taken where sharp wrote it as %s', async (format) => {
    expect(await faultOf(fileOf(await picture.clone().toFormat(format).toBuffer()))).toBeUndefined();
  });

  test('is refused with its own sentence where it is a HEIC or AVIF file', async () => {
    for (const brand of ['heic', 'heix', 'mif1', 'avif']) expect(await faultOf(boxOf(brand))).toBe('heic');
    expect(await faultOf(fileOf(await picture.clone().avif().toBuffer()))).toBe('heic');
  });

  test('is refused where it is empty, or no picture', async () => {
    expect(await faultOf(fileOf(''))).toBe('empty');
    expect(await faultOf(fileOf('Serial number NF-204417'))).toBe('no picture');
    expect(await faultOf(fileOf('\x00\x00\x00\x18ftypisom\x00\x00\x02\x00isomiso2'))).toBe('no picture');
    expect(await faultOf(fileOf(await picture.clone().gif().toBuffer()))).toBe('no picture');
  });

  test('is refused from one byte over 20 MB on', async () => {
    const png = await picture.clone().png().toBuffer();
    const ofSize = (size: number) => fileOf(Buffer.concat([png, Buffer.alloc(size - png.length)]));
    expect(await faultOf(ofSize(20_000_000))).toBeUndefined();
    expect(await faultOf(ofSize(20_000_001))).toBe('too large');
  });
});
