/** The dots of a job: read from its picture, moved by the calibration, and reduced to ink and no ink. */
import sharp from 'sharp';
import { type Refusal, refusal } from '../domain/refusal.ts';
import { mmPerInch, type PrintJob } from './destination.ts';
import type { DestinationSettings } from './destination-settings.ts';

/** Samples from the top left, row by row: one grey or three sRGB for each dot, 0 dark, 255 light. */
export interface Raster {
  readonly widthDots: number;
  readonly heightDots: number;
  readonly channels: 1 | 3;
  readonly samples: Uint8Array;
}

/** One bit for each dot, 1 is ink, the leftmost in the highest bit; every row begins on a whole byte. */
export interface Bitmap {
  readonly widthDots: number;
  readonly heightDots: number;
  readonly bytesPerRow: number;
  readonly bits: Uint8Array;
}

/** Darker than the middle is ink. No dithering: a tag has whole dots, and a grey would break its bars. */
const inkBelow = 128;

/** The largest page at the finest dots, A3 at 600 dpi. */
const mostDots = 80_000_000;

/**
 * The dots of the job, in grey or in sRGB, moved by the offset of the destination. Refuses with `image-unreadable` where
 * the picture is none or has not the dots of its size, and with `printer-offset-clips` where ink would fall off the stock.
 */
export const rasterOf = async (
  job: PrintJob,
  settings: DestinationSettings,
  colour: boolean,
): Promise<Raster | Refusal> => {
  const raster = await readRaster(job.png, colour);
  if (raster === undefined || !hasSize(raster, job)) return refusal('image-unreadable');
  const dots = (mm: number) => Math.round((mm * job.dpi) / mmPerInch);
  const [right, down] = [dots(settings.offset.xMm), dots(settings.offset.yMm)];
  const moved = move(raster, right, down, job.runsOverEdges);
  return moved ?? refusal('printer-offset-clips', { printer: settings.name });
};

const readRaster = async (png: Uint8Array, colour: boolean): Promise<Raster | undefined> => {
  try {
    const { data, info } = await sharp(png, { limitInputPixels: mostDots })
      .flatten({ background: '#fff' })
      .toColourspace(colour ? 'srgb' : 'b-w')
      .raw({ depth: 'uchar' })
      .toBuffer({ resolveWithObject: true });
    if (info.channels !== (colour ? 3 : 1)) return undefined;
    return { widthDots: info.width, heightDots: info.height, channels: colour ? 3 : 1, samples: data };
  } catch {
    return undefined;
  }
};

const hasSize = (raster: Raster, job: PrintJob): boolean =>
  Math.abs(raster.widthDots - (job.widthMm * job.dpi) / mmPerInch) <= 1 &&
  Math.abs(raster.heightDots - (job.heightMm * job.dpi) / mmPerInch) <= 1;

/** The same size, its content moved to the right and down, white where it came from; undefined where ink would be lost that may not be. */
export const move = (
  raster: Raster,
  rightDots: number,
  downDots: number,
  mayLoseInk = false,
): Raster | undefined => {
  if (rightDots === 0 && downDots === 0) return raster;
  const { widthDots, heightDots, channels, samples } = raster;
  const moved = new Uint8Array(samples.length).fill(255);
  for (let y = 0; y < heightDots; y += 1) {
    for (let x = 0; x < widthDots; x += 1) {
      const from = (y * widthDots + x) * channels;
      const toX = x + rightDots;
      const toY = y + downDots;
      const inside = toX >= 0 && toX < widthDots && toY >= 0 && toY < heightDots;
      const dot = samples.subarray(from, from + channels);
      if (inside) moved.set(dot, (toY * widthDots + toX) * channels);
      else if (!mayLoseInk && dot.some((sample) => sample < inkBelow)) return undefined;
    }
  }
  return { ...raster, samples: moved };
};

/** A quarter turn clockwise. */
export const turned = (raster: Raster): Raster => {
  const { widthDots, heightDots, channels, samples } = raster;
  const result = new Uint8Array(samples.length);
  for (let y = 0; y < heightDots; y += 1) {
    for (let x = 0; x < widthDots; x += 1) {
      const from = (y * widthDots + x) * channels;
      result.set(samples.subarray(from, from + channels), (x * heightDots + (heightDots - 1 - y)) * channels);
    }
  }
  return { widthDots: heightDots, heightDots: widthDots, channels, samples: result };
};

/** Of a grey raster. */
export const toBitmap = ({ widthDots, heightDots, samples }: Raster): Bitmap => {
  const bytesPerRow = Math.ceil(widthDots / 8);
  const bits = new Uint8Array(bytesPerRow * heightDots);
  for (let y = 0; y < heightDots; y += 1) {
    for (let x = 0; x < widthDots; x += 1) {
      const sample = samples[y * widthDots + x] ?? 255;
      const at = y * bytesPerRow + (x >> 3);
      if (sample < inkBelow) bits[at] = (bits[at] ?? 0) | (0x80 >> (x & 7));
    }
  }
  return { widthDots, heightDots, bytesPerRow, bits };
};
