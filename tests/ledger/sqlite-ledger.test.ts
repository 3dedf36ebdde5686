import { once } from 'node:events';
import { chmod, cp, mkdir, readdir, readFile, readlink, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { SqliteConnection } from '../../src/ledger/sqlite/connection.ts';
import { schemaVersion } from '../../src/ledger/sqlite/schema.ts';
import { ledgerFileName, openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { requireSmallDisk } from '../support/small-disk.ts';
import { conformance } from './conformance.ts';
import { benchId, deviceRegistered, inspectedDevice, occasion, setUp } from './sample-events.ts';
import { newFolder, opened, spawnStation, tamper } from './sqlite-places.ts';

conformance('an SQLite file', async () => {
  const folder = await newFolder();
  const copied = await newFolder();
  return {
    open: () => opened(folder),
    copy: { file: join(copied, ledgerFileName), open: () => opened(copied) },
    remove: async () => {
      for (const each of [folder, copied]) await rm(each, { recursive: true });
    },
  };
});

/** The tables of the first version. */
const firstTables = [
  'event',
  'tree_head',
  'station',
  'person',
  'model_sheet',
  'device',
  'other_code',
  'inspection',
  'credential',
  'secret',
];

/** Takes away what came with custody, and after it. */
const withoutCustody = `
  drop table if exists notice;
  drop table if exists case_file;
  drop table if exists custody_spell;
  drop index device_by_custody; drop index device_by_return; drop index device_by_place;
  drop index device_out_by_standing;
  alter table device drop column custody_user;
  alter table device drop column expected_on;
  alter table device drop column stored_at;
`;

/** Makes the file one of the first version, in which people had no history. */
const makeVersionOne = async (folder: string): Promise<void> => {
  const database = await SqliteConnection.open(join(folder, ledgerFileName));
  const tables = await database.all<{ name: string }>(`select name from sqlite_schema where type = 'table'`);
  for (const { name } of tables) {
    if (!firstTables.includes(name)) await database.exec(`drop table ${name}`);
  }
  await database.exec('drop index inspection_by_signature; drop index inspection_by_signer');
  await database.exec('alter table device drop column due_what');
  await database.exec(withoutCustody);
  await database.exec(`update person set state = json_remove(state, '$.history'); pragma user_version = 1`);
  await database.close();
};

describe('a data folder', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await newFolder();
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  it('is made where it is missing', async () => {
    const ledger = await opened(join(folder, 'depot', 'data'));
    await ledger.close();
    expect((await stat(join(folder, 'depot', 'data', ledgerFileName))).isFile()).toBe(true);
  });

  it('opens once in a process, and again after it was closed', async () => {
    const first = await opened(folder);
    expect(await openSqliteLedger(folder)).toMatchObject({
      code: 'station-already-open',
      values: { folder },
    });
    await first.append(occasion, async () => setUp);
    expect(await openSqliteLedger(folder)).toMatchObject({
      code: 'station-already-open',
      values: { folder },
    });
    await first.close();
    const again = await opened(folder);
    expect((await again.head()).size).toBe(setUp.length);
    await again.close();
  });

  it.skipIf(process.platform !== 'linux')(
    'is let go of, every file of it, when the ledger is closed',
    async () => {
      const heldFiles = async () => {
        const targets = (await readdir('/proc/self/fd')).map((fd) =>
          readlink(`/proc/self/fd/${fd}`).catch(() => ''),
        );
        return (await Promise.all(targets)).filter((target) => target.startsWith(folder));
      };
      const ledger = await opened(folder);
      await ledger.append(occasion, async () => setUp);
      expect(await heldFiles()).not.toEqual([]);
      await ledger.close();
      expect(await heldFiles()).toEqual([]);
    },
  );

  it('opens once over all processes', async () => {
    const ledger = await opened(folder);
    const outcome = async (): Promise<unknown> => {
      const child = spawnStation('open', folder);
      let output = '';
      child.stdout.on('data', (chunk: Buffer) => {
        output += chunk.toString();
      });
      await once(child, 'close');
      return JSON.parse(output);
    };
    expect(await outcome()).toMatchObject({
      refused: true,
      code: 'station-already-open',
      values: { folder },
    });
    await ledger.close();
    expect(await outcome()).toBe('opened');
  });

  it('is refused where a file of that name stands in the way', async () => {
    const file = join(folder, 'data');
    await writeFile(file, 'a note');
    expect(await openSqliteLedger(file)).toMatchObject({
      code: 'folder-not-writable',
      values: { folder: file },
    });
    expect(await readFile(file, 'utf8')).toBe('a note');
  });

  it('is refused where its ledger is not one, and left as it was', async () => {
    const file = join(folder, ledgerFileName);
    await writeFile(file, 'This is a shopping list and not a ledger of anything.'.repeat(200));
    const before = await readFile(file);
    expect(await openSqliteLedger(folder)).toMatchObject({
      code: 'ledger-damaged',
      values: { folder },
    });
    expect((await readFile(file)).equals(before)).toBe(true);
  });

  it('is refused where its ledger holds the tables of something else', async () => {
    const other = await SqliteConnection.open(join(folder, ledgerFileName));
    await other.exec('create table recipe (name text)');
    await other.close();
    expect(await openSqliteLedger(folder)).toMatchObject({
      code: 'ledger-damaged',
    });
  });

  it('of an older version has its projections made again, which may say more now', async () => {
    const first = await opened(folder);
    await first.append(occasion, async () => setUp);
    const people = await first.read((reader) => reader.people());
    await first.close();
    await makeVersionOne(folder);
    const again = await opened(folder);
    expect(await again.read((reader) => reader.people())).toEqual(people);
    expect((await again.verify()).sound).toBe(true);
    await again.close();
  });

  it('is refused where a newer version wrote its ledger, and opens for that version again', async () => {
    const ledger = await opened(folder);
    await ledger.append(occasion, async () => setUp);
    await ledger.close();
    const setVersion = (version: number) =>
      tamper(folder, (database) => database.exec(`pragma user_version = ${version}`));
    await setVersion(999);
    expect(await openSqliteLedger(folder)).toMatchObject({
      code: 'ledger-from-newer-version',
      values: { folder },
    });
    await setVersion(schemaVersion);
    const again = await opened(folder);
    expect(await again.verify()).toMatchObject({
      sound: true,
      head: { size: setUp.length },
    });
    await again.close();
  });

  it('of the version before checkpoints gets the subtrees of its events, as if they had always been kept', async () => {
    const subtrees = async () => {
      const rows: unknown[] = [];
      await tamper(
        folder,
        async (database) => void rows.push(...(await database.all('select * from subtree'))),
      );
      return rows;
    };
    const ledger = await opened(folder);
    await ledger.append(occasion, async () => [
      ...setUp,
      ...Array.from({ length: 200 }, (_, n) => inspectedDevice(n)).flat(),
    ]);
    await ledger.close();
    const before = await subtrees();
    const old = await SqliteConnection.open(join(folder, ledgerFileName));
    await old.exec(`
      drop index inspection_by_signature; drop index inspection_by_signer;
      alter table device drop column due_what;
      ${withoutCustody}
      drop table subtree; drop table checkpoint; pragma user_version = 2;
    `);
    await old.close();
    const again = await opened(folder);
    expect((await again.verify()).sound).toBe(true);
    await again.close();
    // 1,204 events: a row for each even number.
    expect(before).toHaveLength(602);
    expect(await subtrees()).toEqual(before);
  });

  it('that nobody closed is read through before it opens, and is refused where its pages were damaged', async () => {
    const ledger = await opened(folder);
    await ledger.append(occasion, async () => setUp);
    for (let n = 0; n < 300; n += 1) await ledger.append(occasion, async () => inspectedDevice(n));
    const copyAs = async (name: string, change: (file: Buffer) => void) => {
      const copy = join(folder, name);
      await mkdir(copy);
      const file = await readFile(join(folder, ledgerFileName));
      change(file);
      await writeFile(join(copy, ledgerFileName), file);
      await cp(join(folder, `${ledgerFileName}-wal`), join(copy, `${ledgerFileName}-wal`));
      return copy;
    };
    const whole = await copyAs('whole', () => undefined);
    const damaged = await copyAs('damaged', (file) => file.fill(0, file.length / 2));
    const { size } = await ledger.head();
    await ledger.close();
    const again = await opened(whole);
    expect(await again.verify()).toMatchObject({ sound: true, head: { size } });
    await again.close();
    expect(await openSqliteLedger(damaged)).toMatchObject({
      code: 'ledger-damaged',
      values: { folder: damaged },
    });
  });

  it('is free again after each refusal to open it', async () => {
    await writeFile(join(folder, ledgerFileName), 'x'.repeat(5000));
    expect(await openSqliteLedger(folder)).toMatchObject({
      code: 'ledger-damaged',
    });
    expect(await openSqliteLedger(folder)).toMatchObject({
      code: 'ledger-damaged',
    });
    await rm(join(folder, ledgerFileName));
    const ledger = await opened(folder);
    await ledger.close();
  });

  it.skipIf(process.getuid?.() === 0)('is refused where it may not be written', async () => {
    const locked = join(folder, 'locked');
    await mkdir(locked, { mode: 0o555 });
    expect(await openSqliteLedger(locked)).toMatchObject({
      code: 'folder-not-writable',
      values: { folder: locked },
    });
    await chmod(locked, 0o755);
  });
});

describe('a disk', () => {
  const device = (n: number) => [deviceRegistered(benchId(n), `SN-${n}`)];
  const appended = async (ledger: Ledger, n: number) => ledger.append(occasion, async () => device(n));

  it('that fills up is named, loses nothing that was acknowledged, and is used again once it has room', async (context) => {
    const disk = await requireSmallDisk(context, 1024);
    try {
      const ledger = await opened(disk.folder);
      await ledger.append(occasion, async () => setUp);
      const ballast = join(disk.folder, 'ballast');
      await writeFile(ballast, Buffer.alloc(400 * 1024));
      let acknowledged = setUp.length;
      let outcome = await appended(ledger, acknowledged);
      while (!isRefusal(outcome)) {
        acknowledged = outcome.at(-1)!.seq;
        outcome = await appended(ledger, acknowledged);
      }
      expect(outcome).toMatchObject({
        code: 'disk-full',
        values: { folder: disk.folder },
      });
      expect(acknowledged).toBeGreaterThan(setUp.length);
      expect(await appended(ledger, 9000)).toMatchObject({ code: 'disk-full' });
      expect(await ledger.head()).toMatchObject({ size: acknowledged });
      await rm(ballast);
      expect(await appended(ledger, 9001)).toMatchObject([{ seq: acknowledged + 1 }]);
      expect(await ledger.verify()).toMatchObject({
        sound: true,
        head: { size: acknowledged + 1 },
      });
      await ledger.close();
      const again = await opened(disk.folder);
      expect(await again.verify()).toMatchObject({
        sound: true,
        head: { size: acknowledged + 1 },
      });
      await again.close();
    } finally {
      await disk.remove();
    }
  });

  it('that fills up in the middle of loading a fleet keeps none of it', async (context) => {
    const disk = await requireSmallDisk(context, 1024);
    try {
      const ledger = await opened(disk.folder);
      const outcome = await ledger.appendAll(
        (async function* () {
          yield { occasion, decide: async () => setUp };
          for (let n = 0; n < 5000; n += 1) yield { occasion, decide: async () => inspectedDevice(n) };
        })(),
      );
      expect(outcome).toMatchObject({ code: 'disk-full' });
      expect((await ledger.head()).size).toBe(0);
      expect(await ledger.append(occasion, async () => setUp)).toHaveLength(setUp.length);
      expect((await ledger.verify()).sound).toBe(true);
      await ledger.close();
    } finally {
      await disk.remove();
    }
  });

  it('that is full from the start is named, and opens once it has room', async (context) => {
    const disk = await requireSmallDisk(context, 320);
    try {
      const ballast = join(disk.folder, 'ballast');
      await writeFile(ballast, Buffer.alloc(316 * 1024));
      expect(await openSqliteLedger(disk.folder)).toMatchObject({
        code: 'disk-full',
        values: { folder: disk.folder },
      });
      await rm(ballast);
      const ledger = await opened(disk.folder);
      await ledger.close();
    } finally {
      await disk.remove();
    }
  });

  it('that can only be read is named, and opens once it can be written', async (context) => {
    const disk = await requireSmallDisk(context, 4096);
    try {
      const ledger = await opened(disk.folder);
      await ledger.append(occasion, async () => setUp);
      await ledger.close();
      disk.remount('ro');
      expect(await openSqliteLedger(disk.folder)).toMatchObject({
        code: 'folder-not-writable',
        values: { folder: disk.folder },
      });
      expect(await openSqliteLedger(join(disk.folder, 'new'))).toMatchObject({
        code: 'folder-not-writable',
      });
      disk.remount('rw');
      const again = await opened(disk.folder);
      expect((await again.head()).size).toBe(setUp.length);
      await again.close();
    } finally {
      await disk.remove();
    }
  });
});
