import { describe, expect, test } from 'vitest';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { readPicture } from '../../../src/tags/read/read-picture.ts';
import { benchId, statusTag } from '../sample-tags.ts';
import { fresh, wornFile } from './wear-quickly.ts';

const budgetMs = 60_000;

describe('a picture file in the thread', () => {
  test('gives its symbols and its tag', async () => {
    const read = await readPicture(await fresh(statusTag(['en'])), { budgetMs });
    if (isRefusal(read)) throw new Error(read.code);
    expect(read.symbols.map(({ symbology }) => symbology).sort()).toEqual(['Code 128', 'QR Code']);
    expect(read.reading).toMatchObject({ kind: 'read', benchId });
  }, 120_000);

  test('asks the register of the thread that has it', async () => {
    const asked: string[] = [];
    const isRegistered = (id: string) => {
      asked.push(id);
      return Promise.resolve(true);
    };
    const read = await readPicture(await wornFile(statusTag(['en', 'es']), 1), { budgetMs, isRegistered });
    if (isRefusal(read)) throw new Error(read.code);
    expect(read.reading).toMatchObject({ kind: 'read', benchId });
    expect(asked).toContain(benchId);
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
