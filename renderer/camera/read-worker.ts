/** The worker that reads pictures: the same reader as on the station's side, with its decoders from the page's own files. */
import zbarAddress from '@undecaf/zbar-wasm/dist/zbar.wasm?url';
import zxingAddress from 'zxing-wasm/reader/zxing_reader.wasm?url';
import type { BenchId } from '../../src/domain/brand.ts';
import { prepareDecoders } from '../../src/tags/read/general-decoders.ts';
import type { Picture } from '../../src/tags/read/picture.ts';
import { readSight } from '../../src/tags/read/read-sight.ts';
import type { FromReader, Look, ToReader } from './reader-messages.ts';

const registered = new Set<BenchId>();

const tell = (message: FromReader): void => postMessage(message);

const fetched = async (address: string): Promise<ArrayBuffer> => {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.arrayBuffer();
};

const prepared = (async (): Promise<boolean> => {
  try {
    const [zxing, zbar] = await Promise.all([fetched(zxingAddress), fetched(zbarAddress)]);
    prepareDecoders({ zxing, zbar });
    return true;
  } catch {
    return false;
  }
})();

addEventListener('message', ({ data }: MessageEvent<ToReader>) => {
  if (data.kind === 'register') for (const benchId of data.benchIds) registered.add(benchId);
  else void read(data.picture, data.look);
});

const read = async (picture: ImageBitmap | Blob, look: Look): Promise<void> => {
  const bitmap = await bitmapOf(picture);
  if (bitmap === undefined) return tell({ kind: 'no picture' });
  if (!(await prepared)) return tell({ kind: 'failed' });
  try {
    const started = performance.now();
    let told = 0;
    const reading = await readSight(greyOf(bitmap, look.mostDots), {
      budgetMs: look.budgetMs,
      oursOnly: look.oursOnly,
      isRegistered: (benchId) => registered.has(benchId),
      isCancelled: () => {
        const used = Math.min(1, (performance.now() - started) / look.budgetMs);
        if (used - told < progressStep) return false;
        told = used;
        tell({ kind: 'progress', used });
        return false;
      },
    });
    const isRead = reading.kind === 'code' || reading.kind === 'worn tag';
    tell({ kind: 'read', reading, ...(isRead ? { still: await stillOf(bitmap) } : {}) });
  } catch {
    tell({ kind: 'failed' });
  } finally {
    bitmap.close();
  }
};

const progressStep = 0.04;

/** Turned upright as its EXIF orientation says. */
const bitmapOf = async (picture: ImageBitmap | Blob): Promise<ImageBitmap | undefined> => {
  if (picture instanceof ImageBitmap) return picture;
  try {
    return await createImageBitmap(picture);
  } catch {
    return undefined;
  }
};

const drawn = (bitmap: ImageBitmap, mostDots: number): OffscreenCanvasRenderingContext2D => {
  const scale = Math.min(1, mostDots / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * scale));
  const height = Math.max(1, Math.round(bitmap.height * scale));
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('There is no canvas to draw on.');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  return context;
};

/** Luma after ITU-R BT.601: 0.299 red, 0.587 green, 0.114 blue. */
const greyOf = (bitmap: ImageBitmap, mostDots: number): Picture => {
  const context = drawn(bitmap, mostDots);
  const { width, height } = context.canvas;
  const { data } = context.getImageData(0, 0, width, height);
  const luminance = new Uint8Array(width * height);
  for (let at = 0; at < luminance.length; at += 1) {
    const red = data[4 * at] ?? 0;
    const green = data[4 * at + 1] ?? 0;
    const blue = data[4 * at + 2] ?? 0;
    luminance[at] = Math.round(0.299 * red + 0.587 * green + 0.114 * blue);
  }
  return { width, height, luminance };
};

const stillOf = (bitmap: ImageBitmap): Promise<Blob> =>
  drawn(bitmap, mostStillDots).canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });

const mostStillDots = 4096;
