/** What a picture comes to for whoever acts on it: a code as it was printed, a worn tag to ask about, several, or nothing. */
import bwipjs from 'bwip-js/node';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { writeTagText } from '../../../src/domain/tag-text.ts';
import { prepareDecodersInNode } from '../../../src/tags/read/node-decoders.ts';
import type { Picture } from '../../../src/tags/read/picture.ts';
import { readSight } from '../../../src/tags/read/read-sight.ts';
import { renderTag } from '../../../src/tags/render-tag.ts';
import { frameOf, worn } from '../../e2e/camera-recording.ts';
import { benchId, statusTag } from '../sample-tags.ts';

beforeAll(prepareDecodersInNode);

const content = statusTag(['en']);
const tagRaster = async (changes: Partial<typeof content> = {}): Promise<Uint8Array> => {
  const tag = await renderTag({ ...content, ...changes });
  if (isRefusal(tag)) throw new Error(tag.code);
  return tag.png;
};

const pictureOf = async (png: Uint8Array): Promise<Picture> => {
  const { data, info } = await sharp(png)
    .flatten({ background: '#fff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, luminance: Uint8Array.from(data) };
};

/** Symbols of another encoder, one under the other. */
const symbolsPicture = async (...symbols: readonly (readonly [bcid: string, text: string])[]) => {
  const pictures = await Promise.all(
    symbols.map(([bcid, text]) => bwipjs.toBuffer({ bcid, text, scale: 3, parse: true, paddingheight: 20 })),
  );
  return pictureOf(
    await sharp({ create: { width: 900, height: 400 * symbols.length, channels: 3, background: '#fff' } })
      .composite(pictures.map((input, index) => ({ input, left: 80, top: 60 + 400 * index })))
      .png()
      .toBuffer(),
  );
};

describe('a picture', () => {
  test('of a whole tag gives the text of its QR symbol, which says more than its bars', async () => {
    expect(await readSight(await pictureOf(await tagRaster()))).toEqual({
      kind: 'code',
      text: writeTagText(content),
      isSure: true,
    });
  });

  test('of a GS1 symbol gives it with the symbology identifier that a scanner would send', async () => {
    const reading = await readSight(
      await symbolsPicture(['gs1datamatrix', '(01)09520000000042(21)Q26C49077']),
    );
    expect(reading).toEqual({ kind: 'code', text: ']d2010952000000004221Q26C49077', isSure: true });
  });

  test('of a badge in bars gives it, and says that a second picture must agree', async () => {
    const reading = await readSight(await symbolsPicture(['code128', 'HP10024']));
    expect(reading).toEqual({ kind: 'code', text: 'HP10024', isSure: false });
  });

  test('of a maker’s symbol is not looked through where only our own are wanted', async () => {
    const picture = await symbolsPicture(['code39', 'NF-204417']);
    expect(await readSight(picture)).toMatchObject({ kind: 'code', text: 'NF-204417' });
    expect(await readSight(picture, { oursOnly: true, budgetMs: 300 })).toEqual({ kind: 'none' });
  });

  test('of our tag beside a maker’s symbol gives the tag', async () => {
    const reading = await readSight(await symbolsPicture(['datamatrix', benchId], ['code128', 'QM15-77']));
    expect(reading).toMatchObject({ kind: 'code', text: benchId });
  });

  test('of two different codes, or two tags, chooses neither', async () => {
    const several = { kind: 'several' };
    expect(await readSight(await symbolsPicture(['code128', 'QM15-77'], ['code128', 'QM15-78']))).toEqual(
      several,
    );
    expect(
      await readSight(await symbolsPicture(['datamatrix', benchId], ['datamatrix', 'GJQ81T5WX2'])),
    ).toEqual(several);
  });

  test('of one maker’s code in two symbologies is one code', async () => {
    const text = '(01)09520000000042(21)Q26C49077';
    const reading = await readSight(await symbolsPicture(['gs1datamatrix', text], ['gs1-128', text]));
    expect(reading).toMatchObject({
      kind: 'code',
      text: expect.stringContaining('010952000000004221Q26C49077'),
    });
  });

  test('of a worn tag gives its bench ID to ask about, with what speaks for it', async () => {
    const pose = { widthDots: 1200, turned: 0, tilt: 0, blur: 4, right: 0, down: 0 };
    const luminance = Uint8Array.from(await frameOf(await worn(await tagRaster()), pose));
    const reading = await readSight(
      { width: 1280, height: 720, luminance },
      { budgetMs: 60_000, isRegistered: (id) => id === benchId },
    );
    expect(reading).toMatchObject({ kind: 'worn tag', benchId });
    expect(reading.kind === 'worn tag' && reading.evidence.length).toBeGreaterThan(0);
  });

  test('of nothing gives nothing', async () => {
    const luminance = new Uint8Array(320 * 240).fill(180);
    expect(await readSight({ width: 320, height: 240, luminance })).toEqual({ kind: 'none' });
  });
});
