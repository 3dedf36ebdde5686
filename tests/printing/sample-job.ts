/** Jobs for the tests: a real tag, and a page of invented dots. */
import { PDFDocument, rgb } from 'pdf-lib';
import sharp from 'sharp';
import { millimetres } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { DotDensity, PrintJob } from '../../src/printing/destination.ts';
import { renderTag } from '../../src/tags/render-tag.ts';
import { statusTag } from '../tags/sample-tags.ts';

export const stock = { widthMm: 100, heightMm: 50 };

/** A status tag on 100 × 50 mm. */
export const tagJob = async (dpi: DotDensity, size = stock): Promise<PrintJob> => {
  const rendered = await renderTag(statusTag(['en']), {
    dpi,
    stock: { widthMm: millimetres(size.widthMm), heightMm: millimetres(size.heightMm) },
  });
  if (isRefusal(rendered)) throw new Error(rendered.code);
  return { title: 'Status tag', pdf: rendered.pdf, png: rendered.png, ...size, dpi, copies: 1 };
};

/** Black and white alone, with runs of every length and rows that repeat; the same at every call. */
export const dotsJob = async (dpi: DotDensity, size = stock): Promise<PrintJob & { dots: Uint8Array }> => {
  const width = Math.round((size.widthMm * dpi) / 25.4);
  const height = Math.round((size.heightMm * dpi) / 25.4);
  const dots = new Uint8Array(width * height).fill(255);
  let seed = 12_345;
  const next = () => {
    seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0;
    return seed >>> 16;
  };
  for (let y = 24; y < height - 24; y += 1) {
    if (y % 7 > 3) {
      dots.copyWithin(y * width, (y - 1) * width, y * width);
      continue;
    }
    for (let x = 24; x < width - 24; ) {
      const run = 1 + (next() % (next() % 4 === 0 ? 400 : 9));
      const dark = next() % 2 === 0;
      if (dark) dots.fill(0, y * width + x, y * width + Math.min(x + run, width - 24));
      x += run;
    }
  }
  const png = await sharp(dots, { raw: { width, height, channels: 1 } })
    .png()
    .toBuffer();
  return { title: 'Dots', pdf: await pdfOfSize(size), png, ...size, dpi, copies: 1, dots };
};

const pdfOfSize = async (size: { widthMm: number; heightMm: number }): Promise<Uint8Array> => {
  const document = await PDFDocument.create();
  const points = (mm: number) => (mm * 72) / 25.4;
  document.addPage([points(size.widthMm), points(size.heightMm)]).drawRectangle({
    x: points(10),
    y: points(10),
    width: points(20),
    height: points(5),
    color: rgb(0, 0, 0),
  });
  return document.save();
};
