import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { calibrationJob } from '../../src/printing/calibration/calibration-job.ts';
import { offsetFromCross, offsetFromRulers } from '../../src/printing/calibration/offset.ts';
import type { DotDensity } from '../../src/printing/destination.ts';
import { thermalSettingsSchema } from '../../src/printing/destination-settings.ts';
import { move, rasterOf } from '../../src/printing/raster.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { testFolder } from './debian-printers.ts';

const stock = { widthMm: 100, heightMm: 50 };

const settings = (dpi: DotDensity, size = stock) =>
  thermalSettingsSchema.parse({
    kind: 'thermal',
    name: 'Labels',
    stock: size,
    dpi,
    connection: { by: 'network', host: 'labels' },
  });

/** The pattern as a printer would put it on the stock, seen as ink or none. */
const printedPattern = async (dpi: DotDensity, rightDots = 0, downDots = 0) => {
  const raster = await rasterOf(await calibrationJob(settings(dpi), 'Pattern'), settings(dpi), false);
  if ('refused' in raster) throw new Error(raster.code);
  const shifted = Buffer.alloc(raster.samples.length, 255);
  const { widthDots: width, heightDots: height } = raster;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [toX, toY] = [x + rightDots, y + downDots];
      if (toX < 0 || toX >= width || toY < 0 || toY >= height) continue;
      shifted[toY * width + toX] = raster.samples[y * width + x]!;
    }
  }
  return { width, height, ink: (x: number, y: number) => shifted[y * width + x]! < 128 };
};

describe('the calibration pattern', () => {
  test.each([203, 300, 600] as const)(
    'at %i dpi has its frame 1 mm inside and its cross in the middle',
    async (dpi) => {
      const { width, height, ink } = await printedPattern(dpi);
      const mm = dpi / 25.4;
      expect([width, height]).toEqual([Math.round(100 * mm), Math.round(50 * mm)]);
      // Below the rulers and beside the cross, a row meets the ruler at 3 mm and the frame at 1 mm and 99 mm, and nothing else.
      const row = Math.round(42.5 * mm);
      const inked = Array.from({ length: width }, (_, x) => x).filter((x) => x > 6 * mm && ink(x, row));
      expect(inked.length).toBeGreaterThanOrEqual(2);
      for (const x of inked) expect(Math.abs(x - 99 * mm)).toBeLessThan(0.2 * mm);
      const left = Array.from({ length: Math.round(2 * mm) }, (_, x) => x).filter((x) => ink(x, row));
      for (const x of left) expect(Math.abs(x - 1 * mm)).toBeLessThan(0.2 * mm);
      expect(left.length).toBeGreaterThanOrEqual(2);
      expect(ink(Math.round(50 * mm), Math.round(25 * mm))).toBe(true);
      expect(ink(Math.round(52 * mm), Math.round(25 * mm))).toBe(true);
      expect(ink(Math.round(54 * mm), Math.round(25 * mm))).toBe(false);
    },
  );

  test.runIf(requireTool('pdftoppm'))('is the same as a document', async () => {
    const job = await calibrationJob(settings(300), 'Pattern');
    const page = (await PDFDocument.load(job.pdf)).getPage(0);
    expect([page.getWidth(), page.getHeight()].map(Math.round)).toEqual([283, 142]);
    const folder = await testFolder();
    await writeFile(join(folder, 'pattern.pdf'), job.pdf);
    runTool('pdftoppm', [
      '-r',
      '300',
      '-gray',
      '-png',
      '-singlefile',
      join(folder, 'pattern.pdf'),
      join(folder, 'pattern'),
    ]);
    const drawn = await sharp(join(folder, 'pattern.png'))
      .resize(200, 100, { fit: 'fill' })
      .toColourspace('b-w')
      .raw()
      .toBuffer();
    const dots = await sharp(job.png).resize(200, 100, { fit: 'fill' }).toColourspace('b-w').raw().toBuffer();
    const difference = drawn.reduce((sum, value, at) => sum + Math.abs(value - dots[at]!), 0) / drawn.length;
    // Two drawings of one pattern at a quarter of a millimetre differ by the softness of edges alone.
    expect(difference).toBeLessThan(12);
  });

  test('fits the smallest and the largest stock', async () => {
    for (const size of [
      { widthMm: 20, heightMm: 15 },
      { widthMm: 297, heightMm: 420 },
    ]) {
      const job = await calibrationJob(settings(203, size), 'Pattern');
      const raster = await rasterOf(job, settings(203, size), false);
      expect('refused' in raster).toBe(false);
    }
  });
});

describe('the offset', () => {
  test('that is set already moves the pattern too, over the edge', async () => {
    const moved = { ...settings(300), offset: { xMm: -3, yMm: 0 } };
    const raster = await rasterOf(await calibrationJob(moved, 'Pattern'), moved, false);
    if ('refused' in raster) throw new Error(raster.code);
    // The cross at 50 mm lies at 47 mm, 555 dots at 300 dpi; its height is 25 mm, 295 dots.
    expect(raster.samples[295 * raster.widthDots + 555]).toBe(0);
  });

  test('found from the rulers puts a misplaced print right', async () => {
    // A printer that prints 2.5 mm too far left and 1.5 mm too low.
    const reading = { leftMm: 2.5, rightMm: 100, topMm: 0, bottomMm: 48.5 };
    const offset = offsetFromRulers(reading, stock, { xMm: 0, yMm: 0 });
    expect(offset).toEqual({ xMm: 2.5, yMm: -1.5 });
    const dots = (mm: number) => Math.round((mm * 300) / 25.4);
    const misplaced = await printedPattern(300, dots(-2.5), dots(1.5));
    const [x, y] = [dots(50), dots(25)];
    expect(misplaced.ink(x + dots(2.5), y)).toBe(false);
    const corrected = await printedPattern(300, dots(-2.5) + dots(offset.xMm), dots(1.5) + dots(offset.yMm));
    expect(corrected.ink(x + dots(2.5), y)).toBe(true);
  });

  test('adds to the one that is set already', () => {
    // Printed with 1 mm to the right, still 0.5 mm too far left: 1.5 mm in all.
    const reading = { leftMm: 0.5, rightMm: 100, topMm: 0, bottomMm: 50 };
    expect(offsetFromRulers(reading, stock, { xMm: 1, yMm: 0.2 })).toEqual({ xMm: 1.5, yMm: 0.2 });
  });

  test('of a print in its place stays', () => {
    const reading = { leftMm: 0, rightMm: 100, topMm: 0, bottomMm: 50 };
    expect(offsetFromRulers(reading, stock, { xMm: 0, yMm: 0 })).toEqual({ xMm: 0, yMm: 0 });
  });

  test('found from the cross puts a misplaced print right', () => {
    // The cross belongs at 50 mm and 25 mm.
    const reading = { fromLeftMm: 51.2, fromTopMm: 24.5 };
    expect(offsetFromCross(reading, stock, { xMm: 0, yMm: 0 })).toEqual({ xMm: -1.2, yMm: 0.5 });
  });

  test('that would move ink off the stock leaves the raster alone', () => {
    const raster = { widthDots: 3, heightDots: 1, channels: 1 as const, samples: Uint8Array.of(255, 0, 255) };
    expect(move(raster, 1, 0)?.samples).toEqual(Uint8Array.of(255, 255, 0));
    expect(move(raster, 2, 0)).toBeUndefined();
    expect(move(raster, 0, 1)).toBeUndefined();
  });
});
