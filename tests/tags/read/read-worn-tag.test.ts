import bwipjs from 'bwip-js/node';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { benchIdFrom } from '../../../src/domain/bench-id/bench-id.ts';
import { type BenchId, millimetres } from '../../../src/domain/brand.ts';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { decodeWith } from '../../../src/tags/read/general-decoders.ts';
import { prepareDecodersInNode } from '../../../src/tags/read/node-decoders.ts';
import { isPlain, readWornTag } from '../../../src/tags/read/read-worn-tag.ts';
import { renderTagRaster } from '../../../src/tags/render-tag.ts';
import { benchId, idLabel, quarantineTag, statusTag } from '../sample-tags.ts';
import { fresh, greyOf, randomOf, worn } from './wear-quickly.ts';

/** Far above what a busy machine takes; how fast the reader is, is measured elsewhere. */
const budgetMs = 60_000;

beforeAll(prepareDecodersInNode);

describe('a worn tag that no general decoder reads', () => {
  test.each([1, 2, 3])(
    'gives its bench ID, with what it rests on: seed %i',
    async (seed) => {
      const id = benchIdFrom([seed, 31 - seed, 17, 2 * seed, 9, 22]);
      const picture = await worn(statusTag(['en', 'es'], { benchId: id }), seed);
      for (const decoder of ['zxing-cpp', 'zbar', 'jsqr'] as const)
        expect(await decodeWith(decoder, picture), decoder).toEqual([]);

      const reading = await readWornTag(picture, { budgetMs });
      expect(reading).toMatchObject({ kind: 'read', benchId: id });
      if (reading.kind !== 'read') return;
      expect(isPlain(reading.evidence)).toBe(false);
      expect(reading.evidence.length).toBeGreaterThan(0);
    },
    120_000,
  );

  test('is not taken for a registered device that it is not', async () => {
    const id = benchIdFrom([1, 30, 17, 2, 9, 22]);
    const picture = await worn(statusTag(['en', 'es'], { benchId: id }), 1);
    const others = await readWornTag(picture, { budgetMs, isRegistered: (candidate) => candidate !== id });
    expect(others).toMatchObject({ kind: 'read', benchId: id });
  }, 120_000);
});

describe('a fresh tag', () => {
  test('is read plainly', async () => {
    const reading = await readWornTag(await greyOf(sharp(await fresh(statusTag(['en'])))), { budgetMs });
    expect(reading).toMatchObject({ kind: 'read', benchId });
    expect(reading.kind === 'read' && isPlain(reading.evidence)).toBe(true);
  }, 60_000);

  test('is read upside down, and as an ID label', async () => {
    const upsideDown = await greyOf(sharp(await fresh(statusTag(['en']))).rotate(180));
    expect(await readWornTag(upsideDown, { budgetMs })).toMatchObject({ kind: 'read', benchId });
    const label = await greyOf(sharp(await fresh(idLabel)));
    expect(await readWornTag(label, { budgetMs })).toMatchObject({ kind: 'read', benchId });
  }, 60_000);
});

describe('two tags in one picture', () => {
  test('are said to be several and never chosen between', async () => {
    const other = benchIdFrom([3, 1, 4, 1, 5, 9]);
    const [upper, lower] = [
      await fresh(statusTag(['en'])),
      await fresh(statusTag(['en'], { benchId: other })),
    ];
    const { width = 0, height = 0 } = await sharp(upper).metadata();
    const both = sharp({ create: { width, height: 2 * height + 80, channels: 3, background: '#444' } })
      .composite([
        { input: upper, left: 0, top: 0 },
        { input: lower, left: 0, top: height + 80 },
      ])
      .png();
    const reading = await readWornTag(await greyOf(sharp(await both.toBuffer())), { budgetMs });
    expect(reading).toMatchObject({ kind: 'several tags' });
    expect(reading.kind === 'several tags' && [...reading.benchIds].sort()).toEqual([benchId, other].sort());
  }, 120_000);
});

describe('one tag with much around it is one', () => {
  test.each([
    ['a tall status tag', statusTag(['en', 'es']), { widthMm: millimetres(50), heightMm: millimetres(100) }],
    [
      'a quarantine tag',
      quarantineTag(['en', 'es'], 3),
      { widthMm: millimetres(100), heightMm: millimetres(150) },
    ],
  ] as const)(
    '%s on a plain bench',
    async (_name, content, stock) => {
      const tag = await renderTagRaster(content, { stock });
      if (isRefusal(tag)) throw new Error(tag.code);
      const onBench = sharp(Buffer.from(tag.png)).extend({
        top: 300,
        bottom: 300,
        left: 400,
        right: 400,
        background: '#555',
      });
      expect(
        await readWornTag(await greyOf(sharp(await onBench.png().toBuffer())), { budgetMs }),
      ).toMatchObject({
        kind: 'read',
        benchId,
      });
    },
    120_000,
  );
});

describe('a picture without a tag of ours gives none', () => {
  const random = randomOf(9);
  const noise = Uint8Array.from({ length: 640 * 480 }, () => 256 * random());

  test('noise', async () => {
    expect(await readWornTag({ width: 640, height: 480, luminance: noise }, { budgetMs })).toEqual({
      kind: 'none',
    });
  }, 120_000);

  test.each([
    ['code128', 'NF-2044-17'],
    ['code128', 'K7M3X43SXX'],
    ['ean13', '4006381333931'],
    ['code39', 'QUILLMOOR'],
  ])(
    'another barcode: %s %s',
    async (encoder, text) => {
      const symbol = await bwipjs.toBuffer({ bcid: encoder, text, scale: 4, height: 14, includetext: true });
      const label = sharp(symbol)
        .flatten({ background: '#fff' })
        .extend({ top: 150, bottom: 150, left: 150, right: 150, background: '#fff' })
        .blur(1.5);
      expect(await readWornTag(await greyOf(label), { budgetMs: 4000 })).toEqual({ kind: 'none' });
    },
    120_000,
  );

  test('a whole tag whose ten characters are no bench ID', async () => {
    const tag = statusTag(['en', 'es'], { benchId: 'K7M3X43SXX' as BenchId });
    expect(await readWornTag(await worn(tag, 5), { budgetMs: 4000 })).toEqual({ kind: 'none' });
  }, 120_000);

  test('one of a single dot', async () => {
    const dot = { width: 1, height: 1, luminance: Uint8Array.of(0) };
    expect(await readWornTag(dot, { budgetMs: 4000 })).toEqual({ kind: 'none' });
  });
});

test('a reading stops between steps once it is not wanted, or its time is used up', async () => {
  const picture = await worn(statusTag(['en', 'es']), 4);
  expect(await readWornTag(picture, { isCancelled: () => true })).toEqual({ kind: 'none' });
  let now = 0;
  const clock = () => (now += 100);
  expect(await readWornTag(picture, { budgetMs: 150, now: clock })).toEqual({ kind: 'none' });
}, 60_000);
