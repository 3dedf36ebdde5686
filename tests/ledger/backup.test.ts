/** What a backup is made of, and how it takes the place of a record: broken off at any step, one of the two is whole. */
import { cp, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import yauzl from 'yauzl';
import { ZipFile } from 'yazl';
import { instant } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { planRestore } from '../../src/ledger/backup/put-in-place.ts';
import { readArchive, readManifest } from '../../src/ledger/backup/read-archive.ts';
import { takeBackup } from '../../src/ledger/backup/take-backup.ts';
import type { BackupControl } from '../../src/ledger/backup/work-control.ts';
import { EvidenceFolder } from '../../src/ledger/evidence-folder.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { occasion, personAdded, setUp } from './sample-events.ts';
import { newFolder, opened } from './sqlite-places.ts';

const control: BackupControl = { signal: new AbortController().signal, onProgress: () => undefined };
const about = {
  madeAt: instant('2026-03-02T09:00:00.000Z'),
  station: { stationId: 'harrow-point', name: 'Harrow Point depot' },
};

let folder: string;
beforeEach(async () => {
  folder = await newFolder();
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const recordIn = async (name: string, people: number): Promise<Ledger> => {
  const ledger = await opened(join(folder, name));
  await ledger.append(occasion, async () => setUp);
  for (let n = 0; n < people; n += 1)
    await ledger.append(occasion, async () => [personAdded(`extra-${n}`, `Extra ${n}`)]);
  return ledger;
};

const backupOf = async (
  name: string,
  people: number,
  kept = [Buffer.from(`a picture of ${name}`)],
): Promise<string> => {
  const ledger = await recordIn(name, people);
  const dataFolder = join(folder, name);
  const evidence = new EvidenceFolder(dataFolder);
  for (const bytes of kept) await evidence.put(bytes);
  const file = join(folder, `${name}.zip`);
  const taken = await takeBackup(file, { ledger, evidence, dataFolder, about }, control);
  if (isRefusal(taken)) throw new Error(taken.code);
  await ledger.close();
  return file;
};

const filesOf = async (file: string): Promise<Map<string, Buffer>> => {
  const archive = await yauzl.openPromise(file, { autoClose: false });
  const files = new Map<string, Buffer>();
  for await (const entry of archive.eachEntry())
    files.set(entry.fileName, await buffer(await archive.openReadStreamPromise(entry)));
  archive.close();
  return files;
};

const packed = async (files: ReadonlyMap<string, Buffer>, name: string): Promise<string> => {
  const archive = new ZipFile();
  for (const [path, bytes] of files) archive.addBuffer(bytes, path);
  archive.end();
  const file = join(folder, name);
  await writeFile(file, await buffer(archive.outputStream));
  return file;
};

const readInto = (file: string) =>
  readArchive(file, { recordFile: join(folder, 'unpacked.sqlite') }, control, () => undefined);

describe('a backup', () => {
  it('is an archive of the record, the pictures and a list of both', async () => {
    const files = await filesOf(await backupOf('depot', 3));
    const names = [...files.keys()];
    expect(names.toSorted()).toEqual([
      'backup.json',
      expect.stringMatching(/^evidence\/[0-9a-f]{64}\.jpg$/),
      'ledger.sqlite',
    ]);
    // The file format of SQLite, sqlite.org/fileformat.html §1.3: the first 16 bytes.
    expect(files.get('ledger.sqlite')!.subarray(0, 16).toString('latin1')).toBe('SQLite format 3\u0000');
  });

  it('names documents as documents, and one of an earlier version, in which they had the name of pictures, is read', async () => {
    const pdf = Buffer.from('%PDF-1.7\n1 0 obj\nendobj\n%%EOF\n');
    const files = await filesOf(await backupOf('depot', 1, [pdf]));
    const path = [...files.keys()].find((each) => each.startsWith('evidence/'))!;
    expect(path).toMatch(/^evidence\/[0-9a-f]{64}\.pdf$/);
    const earlier = path.replace('.pdf', '.jpg');
    const list = JSON.parse(files.get('backup.json')!.toString());
    files.delete(path);
    files.set(earlier, pdf);
    files.set('backup.json', Buffer.from(JSON.stringify({ ...list, version: 1 }).replace(path, earlier)));
    const kept: Uint8Array[] = [];
    const read = await readArchive(
      await packed(files, 'earlier.zip'),
      {
        recordFile: join(folder, 'unpacked.sqlite'),
        keepPicture: async (bytes) => void kept.push(bytes),
      },
      control,
      () => undefined,
    );
    expect(read).toMatchObject({ version: 1 });
    expect(kept).toEqual([pdf]);
  });

  it.each([
    [
      'a file that is on no list',
      (files: Map<string, Buffer>) => files.set('ledger.sqlite-wal', Buffer.from('x')),
    ],
    ['a picture that is missing', (files: Map<string, Buffer>) => files.delete(pictureIn(files))],
    [
      'a picture of other bytes',
      (files: Map<string, Buffer>) => files.set(pictureIn(files), Buffer.from('a picture of depop')),
    ],
    [
      'a record of other bytes',
      (files: Map<string, Buffer>) => {
        const record = files.get('ledger.sqlite')!;
        record[record.length - 1] = record[record.length - 1]! ^ 1;
      },
    ],
  ])('with %s is damaged', async (_what, damage) => {
    const files = await filesOf(await backupOf('depot', 1));
    damage(files);
    expect(await readInto(await packed(files, 'damaged.zip'))).toMatchObject({ code: 'backup-damaged' });
  });

  it('whose list is gone, or of another program, is none', async () => {
    const files = await filesOf(await backupOf('depot', 1));
    const list = JSON.parse(files.get('backup.json')!.toString());
    files.set('backup.json', Buffer.from(JSON.stringify({ ...list, format: 'another' })));
    expect(await readManifest(await packed(files, 'other.zip'))).toMatchObject({
      code: 'backup-not-readable',
    });
    files.delete('backup.json');
    expect(await readManifest(await packed(files, 'bare.zip'))).toMatchObject({
      code: 'backup-not-readable',
    });
  });

  it('of a newer version of the program is left to that', async () => {
    const files = await filesOf(await backupOf('depot', 1));
    const list = JSON.parse(files.get('backup.json')!.toString());
    files.set('backup.json', Buffer.from(JSON.stringify({ ...list, version: 3 })));
    expect(await readManifest(await packed(files, 'newer.zip'))).toMatchObject({
      code: 'backup-from-newer-version',
    });
  });
});

const pictureIn = (files: ReadonlyMap<string, Buffer>): string =>
  [...files.keys()].find((path) => path.startsWith('evidence/')) ?? '';

describe('a record that takes the place of another', () => {
  /** The data folder `here` of 9 people, a prepared record of 4 in it, and the plan. */
  const planned = async (): Promise<string> => {
    const here = join(folder, 'here');
    const ledger = await recordIn('here', 9);
    await new EvidenceFolder(here).put(Buffer.from('here'));
    await ledger.close();
    const there = await recordIn('there', 4);
    await new EvidenceFolder(join(folder, 'there')).put(Buffer.from('there'));
    await there.close();
    await mkdir(join(here, 'under-way'));
    await rename(join(folder, 'there'), join(here, 'under-way', 'prepared'));
    await planRestore(here, { prepared: join('under-way', 'prepared'), aside: 'replaced' });
    return here;
  };
  const sizeIn = async (path: string): Promise<number> => {
    const ledger = await opened(path);
    const { sound, head } = await ledger.verify();
    await ledger.close();
    expect(sound).toBe(true);
    return head.size;
  };
  const pictures = async (path: string) => (await readdir(join(path, 'evidence'))).length;

  it('is there at the next opening, and the former one lies aside with its pictures', async () => {
    const here = await planned();
    const sizes = [await sizeIn(here), await sizeIn(join(here, 'replaced'))];
    expect(sizes).toEqual([setUp.length + 4, setUp.length + 9]);
    expect([await pictures(here), await pictures(join(here, 'replaced'))]).toEqual([1, 1]);
    expect((await readdir(here)).toSorted()).toEqual(
      expect.not.arrayContaining(['restore-plan.json', 'under-way']),
    );
  });

  /** The renames in their order; after each of them the power may fail. */
  const steps: readonly (readonly [string, string])[] = [
    ['evidence', join('replaced', 'evidence')],
    ['ledger.sqlite', join('replaced', 'ledger.sqlite')],
    [join('under-way', 'prepared', 'evidence'), 'evidence'],
    [join('under-way', 'prepared', 'ledger.sqlite'), 'ledger.sqlite'],
  ];
  it.each(steps.map((_, done) => done + 1))(
    'is put there whole where the power failed after %i of the four moves',
    async (done) => {
      const here = await planned();
      await mkdir(join(here, 'replaced'));
      for (const [from, to] of steps.slice(0, done)) await rename(join(here, from), join(here, to));
      expect([await sizeIn(here), await sizeIn(join(here, 'replaced'))]).toEqual([
        setUp.length + 4,
        setUp.length + 9,
      ]);
      expect([await pictures(here), await pictures(join(here, 'replaced'))]).toEqual([1, 1]);
    },
  );

  it('takes along what the former one had not yet moved into its file', async () => {
    const here = await planned();
    // As a killed program leaves it: the log beside the file holds events that are acknowledged.
    const ledger = await opened(join(folder, 'killed'));
    await ledger.append(occasion, async () => setUp);
    await mkdir(join(folder, 'copy'));
    for (const name of ['ledger.sqlite', 'ledger.sqlite-wal', 'ledger.sqlite-shm'])
      await cp(join(folder, 'killed', name), join(here, name));
    await ledger.close();
    expect((await readFile(join(here, 'ledger.sqlite-wal'))).length).toBeGreaterThan(0);
    expect(await sizeIn(here)).toBe(setUp.length + 4);
    expect(await sizeIn(join(here, 'replaced'))).toBe(setUp.length);
  });
});
