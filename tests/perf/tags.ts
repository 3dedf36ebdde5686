/** How long tags take: one PDF, against drawing its symbols alone, and a thousand in a row with progress, cancel and flat memory. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import bwipjs from 'bwip-js/node';
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { isRefusal, type Refusal } from '../../src/domain/refusal.ts';
import type { StatusTag } from '../../src/domain/tag-content.ts';
import { writeTagText } from '../../src/domain/tag-text.ts';
import { renderTag, renderTagPdf, renderTagRaster } from '../../src/tags/render-tag.ts';
import { renderTags } from '../../src/tags/render-tags.ts';
import { statusTag } from '../tags/sample-tags.ts';
import { type Benchmark, type Figure, timed } from './measurement.ts';

/** A different device each time, so that nothing is found in a cache that a real job would not find there. */
const tagOf = (index: number): StatusTag =>
  statusTag(['en', 'es'], {
    benchId: benchIdFrom([19, 7, 20, (index >> 10) & 31, (index >> 5) & 31, index & 31]),
    serial: `NF-${200000 + index}`,
  });

const done = <T extends object>(tag: T | Refusal): T => {
  if (isRefusal(tag)) throw new Error(`refused: ${tag.code}`);
  return tag;
};

/** Both symbols of the tag as pictures at a module of 5 dots, as the default tag has them at 300 dpi. */
const drawSymbolsAlone = async (tag: StatusTag): Promise<void> => {
  await bwipjs.toBuffer({ bcid: 'code128', text: tag.benchId, scale: 5 });
  const levelH = { eclevel: 'H' };
  await bwipjs.toBuffer({ bcid: 'qrcode', text: writeTagText(tag), scale: 5, ...levelH });
};

/** The same as SVG text: the least that drawing them can cost, since nothing is filled or compressed. */
const drawSymbolsAsSvg = (tag: StatusTag): void => {
  const levelH = { eclevel: 'H' };
  bwipjs.toSVG({ bcid: 'code128', text: tag.benchId, scale: 5 });
  bwipjs.toSVG({ bcid: 'qrcode', text: writeTagText(tag), scale: 5, ...levelH });
};

const megabytes = (bytes: number): number => bytes / 2 ** 20;

const collectGarbage = (): void => {
  setFlagsFromString('--expose-gc');
  const collect: unknown = runInNewContext('gc');
  if (typeof collect === 'function') collect();
};

const one = async (): Promise<readonly Figure[]> => {
  for (let index = 0; index < 20; index += 1) {
    await renderTagPdf(tagOf(index));
    await drawSymbolsAlone(tagOf(index));
    drawSymbolsAsSvg(tagOf(index));
  }
  const pdfs: number[] = [];
  const pdf = await timed(100, async (index) => {
    pdfs.push(done(await renderTagPdf(tagOf(1000 + index))).pdf.length);
  });
  const symbols = await timed(100, (index) => drawSymbolsAlone(tagOf(2000 + index)));
  const svg = await timed(100, (index) => drawSymbolsAsSvg(tagOf(5000 + index)));
  const raster = await timed(10, async (index) => done(await renderTagRaster(tagOf(3000 + index))));
  const both = await timed(10, async (index) => done(await renderTag(tagOf(4000 + index))));
  return [
    {
      name: 'one status tag PDF, warm, median',
      value: pdf.medianMs,
      unit: 'ms',
      budget: 150,
      noise: pdf.noise,
    },
    { name: 'one status tag PDF, warm, 95th percentile', value: pdf.p95Ms, unit: 'ms', budget: 150 },
    {
      name: 'bwip-js drawing its two symbols alone, median',
      value: symbols.medianMs,
      unit: 'ms',
      noise: symbols.noise,
    },
    {
      name: 'PDF over the symbols alone',
      value: pdf.medianMs / symbols.medianMs,
      unit: '×',
      budget: 3,
      noise: pdf.noise + symbols.noise,
    },
    { name: 'PDF over the symbols alone as SVG', value: pdf.medianMs / svg.medianMs, unit: '×' },
    { name: 'one status tag raster at 300 dpi, read back, median', value: raster.medianMs, unit: 'ms' },
    { name: 'PDF and raster together, read back, median', value: both.medianMs, unit: 'ms' },
    { name: 'size of the PDF', value: Math.max(...pdfs) / 1000, unit: 'kB' },
  ];
};

const thousand = async (): Promise<readonly Figure[]> => {
  const contents = Array.from({ length: 1000 }, (_none, index) => tagOf(10_000 + index));
  let told = 0;
  let early = { rss: 0, heap: 0 };
  const started = performance.now();
  for await (const { tag, index } of renderTags(contents, {}, { onProgress: () => (told += 1) })) {
    done(tag);
    if (index !== 199) continue;
    collectGarbage();
    const { rss, heapUsed } = process.memoryUsage();
    early = { rss, heap: heapUsed };
  }
  const seconds = (performance.now() - started) / 1000;
  collectGarbage();
  const { rss, heapUsed } = process.memoryUsage();
  return [
    { name: 'a thousand status tags as PDF', value: seconds, unit: 's', budget: 60 },
    { name: 'times that progress was told', value: told, unit: 'tags' },
    { name: 'resident memory after 200', value: megabytes(early.rss), unit: 'MB' },
    { name: 'resident memory after 1000', value: megabytes(rss), unit: 'MB' },
    { name: 'resident memory, 1000 over 200', value: rss / early.rss, unit: '×', budget: 1.15 },
    { name: 'heap in use, 1000 over 200', value: heapUsed / early.heap, unit: '×', budget: 1.15 },
  ];
};

/** From the call of `abort` until the batch has stopped, and how many tags were made by then. */
const cancel = async (): Promise<readonly Figure[]> => {
  const contents = Array.from({ length: 1000 }, (_none, index) => tagOf(20_000 + index));
  const controller = new AbortController();
  let made = 0;
  let abortedAt = 0;
  setTimeout(() => {
    abortedAt = performance.now();
    controller.abort();
  }, 500);
  try {
    for await (const _tag of renderTags(contents, {}, { signal: controller.signal })) made += 1;
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'AbortError') throw error;
  }
  return [
    { name: 'tags made until cancelled after half a second', value: made, unit: 'tags', budget: 999 },
    { name: 'from cancel to stop', value: performance.now() - abortedAt, unit: 'ms', budget: 150 },
  ];
};

export const peer = 'bwip-js drawing the symbols of the same tags';

export const benchmark: Benchmark = async () => [
  ...(await one()),
  ...(await thousand()),
  ...(await cancel()),
];
