/** Archives that unpack without end, or to somewhere else, given as a backup and as a list of devices: refused, memory flat, nothing left. */
import { createHash } from 'node:crypto';
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { demo, demoStation, type TestStation, temporaryFolder } from '../support/station-fixture.ts';
import { mostMemoryOf } from './flat-memory.ts';
import { type HandEntry, zipByHand } from './zip-by-hand.ts';

const megabyte = 1_000_000;
const zeros = Buffer.alloc(60 * megabyte);

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/** A list that fits these files, as whoever makes a trap would write it. */
const manifest = (files: readonly { readonly path: string; readonly content: Buffer }[]): HandEntry => ({
  name: 'backup.json',
  content: Buffer.from(
    JSON.stringify({
      format: 'SRL Bench backup',
      version: 2,
      madeAt: '2026-03-10T08:00:00.000Z',
      station: { stationId: 'trap', name: 'Trap' },
      record: { size: 1, rootHash: '00' },
      files: files.map(({ path, content }) => ({ path, bytes: content.length, sha256: sha256(content) })),
    }),
  ),
});

const backupOf = (...files: readonly { readonly path: string; readonly content: Buffer }[]): Buffer =>
  zipByHand([...files.map(({ path, content }) => ({ name: path, content })), manifest(files)]);

const small = Buffer.from('SQLite format 3\0 and nothing of it');
const inner = zipByHand([{ name: 'ledger.sqlite', content: zeros.subarray(0, 20 * megabyte) }]);

/** Each a trap, by what it does. */
const traps: readonly (readonly [string, () => Buffer])[] = [
  ['a record of 60 MB of nothing', () => backupOf({ path: 'ledger.sqlite', content: zeros })],
  [
    'a picture of 60 MB of nothing',
    () =>
      backupOf(
        { path: 'ledger.sqlite', content: small },
        { path: `evidence/${sha256(zeros)}.jpg`, content: zeros },
      ),
  ],
  ['a list of 80 MB', () => zipByHand([{ name: 'backup.json', content: Buffer.alloc(80 * megabyte, '[') }])],
  ['an archive in the archive', () => backupOf({ path: 'ledger.sqlite', content: inner })],
  [
    'twenty thousand files',
    () =>
      zipByHand(
        Array.from({ length: 20_000 }, (_, index) => ({ name: `evidence/${index}`, content: small })),
      ),
  ],
  [
    'files that overlap',
    () =>
      zipByHand([
        { name: 'ledger.sqlite', content: small },
        ...Array.from({ length: 200 }, (_, index) => ({
          name: `evidence/${index}`,
          content: small,
          bytesOf: 0,
        })),
        manifest([{ path: 'ledger.sqlite', content: small }]),
      ]),
  ],
  [
    'a size that is a lie',
    () =>
      zipByHand([
        { name: 'ledger.sqlite', content: zeros.subarray(0, 20 * megabyte), claimedBytes: 34 },
        manifest([{ path: 'ledger.sqlite', content: small }]),
      ]),
  ],
  [
    'the same file twice',
    () =>
      zipByHand([
        { name: 'ledger.sqlite', content: small },
        { name: 'ledger.sqlite', content: small },
        manifest([{ path: 'ledger.sqlite', content: small }]),
      ]),
  ],
  ...['../ledger.sqlite', '/etc/cron.d/x', 'evidence/../../x.jpg', '..\\..\\x', 'C:\\x', 'a\u0000b'].map(
    (path) =>
      [
        `the name ${JSON.stringify(path)}`,
        () => backupOf({ path: 'ledger.sqlite', content: small }, { path, content: small }),
      ] as const,
  ),
  [
    'a symbolic link for the record',
    () =>
      zipByHand([
        { name: 'ledger.sqlite', content: Buffer.from('/etc/passwd'), mode: 0o120777 },
        manifest([{ path: 'ledger.sqlite', content: Buffer.from('/etc/passwd') }]),
      ]),
  ],
  ['half an archive', () => backupOf({ path: 'ledger.sqlite', content: small }).subarray(40)],
  ['no archive', () => Buffer.from('<script>alert(1)</script>')],
  ['nothing', () => Buffer.alloc(0)],
];

/** What a job of the station came to. */
const ended = async <Status extends { readonly state: string }>(
  ask: () => Promise<Status>,
): Promise<Status> => {
  for (;;) {
    const status = await ask();
    if (status.state !== 'working') return status;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

/** But for the empty folder in which works are under way. */
const everythingIn = async (folder: string): Promise<readonly string[]> =>
  (await readdir(folder, { recursive: true }))
    .filter((name) => name !== 'under-way' && !/-(wal|shm)$/.test(name))
    .sort();

describe('given as a backup', () => {
  let station: TestStation;
  test.each(traps)('is refused with a sentence, and leaves nothing behind: %s', async (_what, made) => {
    station = await demoStation();
    await station.expectOutput('session.sign-in', { badge: demo.administrator });
    const file = join(await temporaryFolder(), 'trap.zip');
    await writeFile(file, made());
    const before = await everythingIn(station.folder);
    const { result, bytes } = await mostMemoryOf(async () => {
      const { job } = await station.expectOutput('restore.open', { file });
      return ended(() => station.expectOutput('restore.status', { job }));
    });
    expect(result).toMatchObject({ state: 'refused' });
    expect((result as { sentence: string }).sentence).toMatch(/\.$/);
    expect(bytes).toBeLessThan(90 * megabyte);
    expect(await everythingIn(station.folder)).toEqual(before);
    expect(await station.expectOutput('station.status', {})).toMatchObject({ name: 'Harrow Point depot' });
  });
});

describe('given as a list of devices', () => {
  let station: TestStation;

  const workbooks: readonly (readonly [string, () => Buffer])[] = [
    [
      'a sheet of 130 MB of nothing',
      () =>
        zipByHand([
          { name: '[Content_Types].xml', content: small },
          { name: 'xl/workbook.xml', content: small },
          { name: 'xl/worksheets/sheet1.xml', content: Buffer.alloc(130 * megabyte) },
        ]),
    ],
    [
      'many sheets of 10 MB each',
      () =>
        zipByHand(
          Array.from({ length: 40 }, (_, index) => ({
            name: `xl/worksheets/sheet${index}.xml`,
            content: zeros.subarray(0, 10 * megabyte),
          })),
        ),
    ],
    [
      'three thousand parts',
      () =>
        zipByHand(Array.from({ length: 3_000 }, (_, index) => ({ name: `xl/${index}.xml`, content: small }))),
    ],
    [
      'entities that grow',
      () => {
        const grown = Array.from(
          { length: 12 },
          (_, index) => `<!ENTITY e${index + 1} "${`&e${index};`.repeat(10)}">`,
        );
        const xml = `<!DOCTYPE x [<!ENTITY e0 "ha">${grown.join('')}]><x>&e12;</x>`;
        return zipByHand([
          { name: 'xl/workbook.xml', content: Buffer.from(xml) },
          { name: 'xl/sharedStrings.xml', content: Buffer.from(xml) },
        ]);
      },
    ],
    [
      'an entity that is a file',
      () =>
        zipByHand([
          {
            name: 'xl/workbook.xml',
            content: Buffer.from('<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]><x>&e;</x>'),
          },
        ]),
    ],
    [
      'a size that is a lie',
      () => zipByHand([{ name: 'xl/workbook.xml', content: zeros, claimedBytes: 10 }]),
    ],
    ['a way out of the folder', () => zipByHand([{ name: '../../xl/workbook.xml', content: small }])],
  ];

  test.each(workbooks)('is refused with a sentence, memory flat: %s', async (_what, made) => {
    station = await demoStation();
    await station.expectOutput('session.sign-in', { badge: demo.administrator });
    const contentBase64 = made().toString('base64');
    const { events } = await station.expectOutput('record.size', {});
    const { result, bytes } = await mostMemoryOf(async () => {
      const { job } = await station.expectOutput('import.preview', { fileName: 'fleet.xlsx', contentBase64 });
      return ended(() => station.expectOutput('import.status', { job }));
    });
    expect(result).toMatchObject({ state: 'refused' });
    expect(JSON.stringify(result)).not.toMatch(/root:|hahaha/);
    expect(bytes).toBeLessThan(400 * megabyte);
    expect(await station.expectOutput('record.size', {})).toEqual({ events });
  });
});
