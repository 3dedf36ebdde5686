/** Pictures that are traps, given wherever a picture can be given: refused, memory flat, and nothing kept but the picture itself. */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { demo, demoStation } from '../support/station-fixture.ts';
import { mostMemoryOf } from './flat-memory.ts';

const megabyte = 1_000_000;
const benchId = 'GJQ81T5WX2' as never;

/** A chunk of a PNG (ISO/IEC 15948). */
const chunk = (type: string, content: Buffer): Buffer => {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), content]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(content.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
};

/** A grey PNG of one colour, one bit a dot, that claims to be so large. */
const plainPng = (width: number, height: number, rows = height): Buffer => {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 1;
  const row = Math.ceil(width / 8) + 1;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(Buffer.alloc(row * rows))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
};

const photograph = (): Promise<Buffer> =>
  sharp({ create: { width: 640, height: 480, channels: 3, background: '#654' } })
    .jpeg()
    .toBuffer();

const svg = (inside: string): Buffer =>
  Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" width="100" height="100">${inside}</svg>`);

const traps: readonly (readonly [string, () => Buffer | Promise<Buffer>])[] = [
  ['a PNG of 65,000 by 65,000 dots of one colour', () => plainPng(65_000, 65_000)],
  ['a PNG that claims the most that can be claimed', () => plainPng(2 ** 31 - 1, 2 ** 31 - 1, 1)],
  ['a PNG of one row, a billion dots long', () => plainPng(1_000_000_000, 1, 1)],
  ['a PNG whose dots never come', () => plainPng(4_000, 4_000, 3)],
  ['half a photograph', async () => (await photograph()).subarray(0, 900)],
  [
    'a photograph whose end is rubbish',
    async () => Buffer.concat([(await photograph()).subarray(0, 1200), Buffer.alloc(500, 7)]),
  ],
  ['an SVG with a script', () => svg('<script>alert(1)</script>')],
  ['an SVG that names a file', () => svg('<image href="file:///etc/passwd" width="9" height="9"/>')],
  [
    'an SVG that grows',
    () =>
      Buffer.from(
        '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;">]><svg xmlns="http://www.w3.org/2000/svg"><text>&b;</text></svg>',
      ),
  ],
  [
    'a GIF',
    () =>
      sharp({ create: { width: 9, height: 9, channels: 3, background: '#fff' } })
        .gif()
        .toBuffer(),
  ],
  [
    'a TIFF',
    () =>
      sharp({ create: { width: 9, height: 9, channels: 3, background: '#fff' } })
        .tiff()
        .toBuffer(),
  ],
  ['the head of a HEIC', () => Buffer.from('\0\0\0\u0018ftypheic\0\0\0\0mif1heic', 'latin1')],
  [
    'a PDF that calls itself a picture',
    () => Buffer.from('%PDF-1.7\n1 0 obj<</OpenAction<</S/JavaScript/JS(app.alert(1))>>>>'),
  ],
  ['a page', () => Buffer.from('<html><script>alert(1)</script></html>')],
  ['nothing', () => Buffer.alloc(0)],
];

const filesIn = async (folder: string): Promise<readonly string[]> =>
  (await readdir(folder, { recursive: true })).filter((name) => !/-(wal|shm)$/.test(name)).sort();

describe('a trap', () => {
  test.each(traps)('is refused with a sentence, memory flat, and nothing left: %s', async (_what, made) => {
    const station = await demoStation();
    const { expectOutput, call, folder } = station;
    const pictureBase64 = (await made()).toString('base64');
    const { events } = await expectOutput('record.size', {});
    const before = await filesIn(folder);
    const { result, bytes } = await mostMemoryOf(async () => [
      await call('device.keep-picture', { benchId, of: 'marking', pictureBase64 }),
      await call('picture.read', { pictureBase64 }),
    ]);
    for (const answer of result) {
      expect(answer).toMatchObject({ ok: false });
      if (!answer.ok) expect(answer.error.sentence).toMatch(/^[A-Z].*\.$/);
      if (!answer.ok) expect(answer.error.code).not.toBe('internal-error');
    }
    expect(bytes).toBeLessThan(300 * megabyte);
    expect(await expectOutput('record.size', {})).toEqual({ events });
    expect(await filesIn(folder)).toEqual(before);
  });
});

describe('a photograph', () => {
  test('keeps nothing but the picture: no place, no comment, no script, nothing behind its end', async () => {
    const { expectOutput, folder } = await demoStation();
    const hidden = '<script>alert("EXIF")</script>';
    const told = await sharp(await photograph())
      .withExif({
        IFD0: { Artist: hidden, ImageDescription: hidden },
        IFD3: { GPSLatitude: '51/1 28/1 0/1' },
      })
      .toBuffer();
    const polyglot = Buffer.concat([told, Buffer.from(`PK\u0003\u0004${hidden}<?php echo 1 ?>`)]);
    expect(polyglot.includes(hidden)).toBe(true);
    const { picture } = await expectOutput('device.keep-picture', {
      benchId,
      of: 'marking',
      pictureBase64: polyglot.toString('base64'),
    });
    const kept = await expectOutput('picture.show', { sha256: picture.sha256 } as never);
    const bytes = Buffer.from(
      Object.values(kept).find((each) => typeof each === 'string' && each.length > 500) as string,
      'base64',
    );
    for (const part of ['script', 'EXIF', 'Exif', '<?php', 'PK\u0003\u0004', 'GPS'])
      expect(bytes.includes(part), part).toBe(false);
    expect((await sharp(bytes).metadata()).format).toBe('jpeg');
    expect(
      (await filesIn(join(folder, 'evidence'))).filter((name) => /\.(jpg|pdf)$/.test(name)).length,
    ).toBeGreaterThan(0);
  });

  test('is taken for what its bytes are, whatever name it has', async () => {
    const { expectOutput } = await demoStation();
    const webp = await sharp({ create: { width: 90, height: 60, channels: 3, background: '#654' } })
      .webp()
      .toBuffer();
    const { picture } = await expectOutput('device.keep-picture', {
      benchId,
      of: 'marking',
      pictureBase64: webp.toString('base64'),
    });
    expect(picture).toMatchObject({ mediaType: 'image/jpeg', width: 90, height: 60 });
  });
});

test('the attendant is the one who gives them', async () => {
  const { expectOutput } = await demoStation();
  await expectOutput('session.sign-in', { badge: demo.attendant });
  const pictureBase64 = (await photograph()).toString('base64');
  expect(
    (await expectOutput('device.keep-picture', { benchId, of: 'marking', pictureBase64 })).picture.of,
  ).toBe('marking');
});
