import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { writeTagText } from '../../../src/domain/tag-text.ts';
import { unreadable } from '../../../src/tags/prove.ts';
import { readSymbols } from '../../../src/tags/read/read-symbols.ts';
import { renderTag } from '../../../src/tags/render-tag.ts';
import { requireTool, runTool } from '../../support/debian-tools.ts';
import { benchId, statusTag } from '../sample-tags.ts';

const content = statusTag(['en', 'es']);
const both = [
  { symbology: 'Code 128', text: benchId },
  { symbology: 'QR Code', text: writeTagText(content) },
];

const tagPicture = async (): Promise<Uint8Array> => {
  const tag = await renderTag(content);
  if (isRefusal(tag)) throw new Error(tag.code);
  return tag.png;
};

const sorted = async (image: Uint8Array) => {
  const read = await readSymbols(image);
  if (isRefusal(read)) throw new Error(read.code);
  return [...read].sort((a, b) => a.symbology.localeCompare(b.symbology));
};

describe('a picture of a tag', () => {
  test('gives both symbols', async () => {
    expect(await sorted(await tagPicture())).toEqual(both);
  });

  test('gives both symbols as a JPEG, turned by a quarter and smaller', async () => {
    const turned = await sharp(await tagPicture())
      .rotate(90)
      .resize({ height: 900 })
      .jpeg({ quality: 80 })
      .toBuffer();
    expect(await sorted(turned)).toEqual(both);
  });

  test('gives both symbols in a photograph-like picture: askew, grey, with a wide dark surround', async () => {
    const askew = await sharp(await tagPicture())
      .rotate(7, { background: '#666' })
      .extend({
        top: 300,
        bottom: 300,
        left: 400,
        right: 400,
        background: '#666',
      })
      .linear(0.6, 40)
      .jpeg({ quality: 75 })
      .toBuffer();
    expect(await sorted(askew)).toEqual(both);
  });

  test('gives nothing where there is no symbol', async () => {
    const empty = await sharp({
      create: { width: 400, height: 300, channels: 3, background: '#fff' },
    })
      .png()
      .toBuffer();
    expect(await readSymbols(empty)).toEqual([]);
  });
});

describe.runIf(requireTool('zint'))('symbols of another encoder', () => {
  // zint's numbers: 20 Code 128, 58 QR Code, 71 Data Matrix, 8 Code 39.
  test.each([
    ['20', 'Code 128', 'K7M3X43SXJ'],
    ['58', 'QR Code', 'SRL H4RP K7M3X43SXJ TAG4 REMOVED 20261124 77Z0AEWC'],
    ['71', 'Data Matrix', 'K7M3X43SXJ'],
    ['8', 'Code39', 'NF-204417'],
  ])('are read: %s %s', async (number, symbology, text) => {
    const folder = mkdtempSync(join(tmpdir(), 'symbols-'));
    try {
      const path = join(folder, 'symbol.png');
      runTool('zint', ['-b', number, '-d', text, '-o', path, '--quietzones', '--scale', '2']);
      expect(await readSymbols(readFileSync(path))).toEqual([{ symbology, text }]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('a file that is no picture', () => {
  test.each([
    ['words', Buffer.from('not a picture')],
    ['nothing', Buffer.alloc(0)],
    ['a drawing in SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')],
  ])('is refused: %s', async (_name, bytes) => {
    expect(await readSymbols(bytes)).toMatchObject({
      refused: true,
      code: 'image-unreadable',
    });
  });

  test('is refused where a PNG breaks off half-way', async () => {
    const whole = await tagPicture();
    expect(await readSymbols(whole.subarray(0, whole.length / 2))).toMatchObject({
      code: 'image-unreadable',
    });
  });

  test('is refused where it claims more pixels than any photograph has', async () => {
    const huge = await sharp({
      create: {
        width: 11_000,
        height: 11_000,
        channels: 3,
        background: '#fff',
      },
    })
      .png({ compressionLevel: 9 })
      .toBuffer();
    expect(await readSymbols(huge)).toMatchObject({ code: 'image-unreadable' });
  });
});

describe('the proof of a raster', () => {
  test('fails by name where a symbol is covered', async () => {
    const patch = await sharp({
      create: { width: 200, height: 300, channels: 3, background: '#fff' },
    })
      .png()
      .toBuffer();
    const covered = await sharp(await tagPicture())
      .composite([{ input: patch, left: 880, top: 0 }])
      .png()
      .toBuffer();
    expect(await unreadable(covered, both as Parameters<typeof unreadable>[1])).toBe('QR Code');
  });

  test('fails where a symbol says something else', async () => {
    const other = [{ symbology: 'Code 128', text: 'K7M3X43SXX' }, both[1]] as Parameters<
      typeof unreadable
    >[1];
    expect(await unreadable(await tagPicture(), other)).toBe('Code 128');
  });

  test('fails where there is a symbol too many', async () => {
    expect(await unreadable(await tagPicture(), both.slice(0, 1) as Parameters<typeof unreadable>[1])).toBe(
      'Code 128',
    );
  });
});
