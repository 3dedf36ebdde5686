/** Picture files read in the thread: worn tags, the register's word, what is no picture, and readings that nobody wants any more. */
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { readPicture } from '../../../src/tags/read/read-picture.ts';
import { benchId, statusTag } from '../sample-tags.ts';
import { fresh, wornFile } from './wear-quickly.ts';

const budgetMs = 60_000;

/** The uppermost fifth, in which they stand, under grey paint. */
const withoutPrintedCharacters = async (image: Buffer): Promise<Buffer> => {
  const { width = 0, height = 0 } = await sharp(image).metadata();
  const paint = { width, height: Math.round(height / 5), channels: 3, background: '#ccc' } as const;
  return sharp(image)
    .composite([{ input: await sharp({ create: paint }).png().toBuffer(), left: 0, top: 0 }])
    .png()
    .toBuffer();
};

describe('a picture file in the thread', () => {
  test('gives its symbols and its tag', async () => {
    const read = await readPicture(await fresh(statusTag(['en'])), { budgetMs });
    if (isRefusal(read)) throw new Error(read.code);
    expect(read.symbols.map(({ symbology }) => symbology).sort()).toEqual(['Code 128', 'QR Code']);
    expect(read.reading).toMatchObject({ kind: 'read', benchId });
  }, 120_000);

  test('whose printed characters are covered counts only where the register knows the bench ID', async () => {
    const image = await withoutPrintedCharacters(await wornFile(statusTag(['en', 'es']), 3));
    const asked: string[] = [];
    const readingWhere = async (known: boolean) => {
      const isRegistered = async (id: string) => {
        asked.push(id);
        return known;
      };
      const read = await readPicture(image, { budgetMs: known ? budgetMs : 8_000, isRegistered });
      if (isRefusal(read)) throw new Error(read.code);
      return read.reading;
    };
    expect(await readingWhere(true)).toMatchObject({ kind: 'read', benchId });
    expect(await readingWhere(false)).toEqual({ kind: 'none' });
    expect(new Set(asked)).toEqual(new Set([benchId]));
  }, 120_000);

  test.each([
    ['nothing', Buffer.alloc(0)],
    ['words', Buffer.from('not a picture')],
    ['half a picture', undefined],
  ])(
    'is refused with a sentence where it is %s',
    async (_name, bytes) => {
      const whole = await fresh(statusTag(['en']));
      expect(await readPicture(bytes ?? whole.subarray(0, whole.length / 2))).toMatchObject({
        refused: true,
        code: 'image-unreadable',
      });
    },
    60_000,
  );

  test('is left where the signal is aborted, and the next one is read all the same', async () => {
    const controller = new AbortController();
    const image = await wornFile(statusTag(['en', 'es']), 2);
    const reading = readPicture(image, { budgetMs, signal: controller.signal });
    controller.abort(new Error('not wanted'));
    await expect(reading).rejects.toThrow('not wanted');
    expect(await readPicture(Buffer.alloc(0))).toMatchObject({ code: 'image-unreadable' });
  }, 120_000);
});
