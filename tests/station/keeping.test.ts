/** Backups and restores through the contract, with real files and a real disk that fills. */
import { access, cp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { tamper } from '../ledger/sqlite-places.ts';
import { requireSmallDisk } from '../support/small-disk.ts';
import {
  demo,
  demoStation,
  type TestStation,
  temporaryFolder,
  testStation,
} from '../support/station-fixture.ts';

type Made = Extract<Awaited<ReturnType<typeof backupEnd>>, { state: 'made' }>;

const ended = async <Status extends { readonly state: string }>(ask: () => Promise<Status>) => {
  for (;;) {
    const status = await ask();
    if (status.state !== 'working') return status as Exclude<Status, { readonly state: 'working' }>;
    await wait(20);
  }
};

const backupEnd = async (station: TestStation, file?: string) => {
  const { job } = await station.expectOutput('backup.make', file === undefined ? {} : { file });
  return ended(() => station.expectOutput('backup.status', { job }));
};

const madeIn = async (station: TestStation, file?: string): Promise<Made> => {
  const end = await backupEnd(station, file);
  if (end.state !== 'made') throw new Error(end.sentence);
  return end;
};

const opened = async (station: TestStation, file: string) => {
  const { job } = await station.expectOutput('restore.open', { file });
  return { job, end: await ended(() => station.expectOutput('restore.status', { job })) };
};

const ready = async (station: TestStation, file: string) => {
  const { job, end } = await opened(station, file);
  if (end.state !== 'ready') throw new Error(end.sentence);
  return { job, ...end };
};

const asAdministrator = async (station: TestStation) => {
  await station.expectOutput('session.sign-in', { badge: demo.administrator });
  return station;
};

const addUser = (station: TestStation, badge: string) =>
  station.expectOutput('person.add', { name: `Person ${badge}`, badge, roles: ['user'] });

const eventLines = async (station: TestStation): Promise<readonly string[]> => {
  const { path } = await station.expectOutput('ledger.export', {});
  return (await readFile(path, 'utf8')).trimEnd().split('\n');
};

describe('a backup', () => {
  test('made by hand holds the whole record and the pictures, and comes back in an empty folder, proved', async () => {
    const station = await asAdministrator(await demoStation());
    const pictureBase64 = (
      await sharp({ create: { width: 80, height: 60, channels: 3, background: '#345' } })
        .png()
        .toBuffer()
    ).toString('base64');
    const { devices } = await station.expectOutput('device.list', {});
    const benchId = devices[0]!.benchId;
    await station.expectOutput('device.keep-picture', { benchId, of: 'marking', pictureBase64 });
    const before = await eventLines(station);
    const target = join(await temporaryFolder(), 'stick', 'depot.zip');
    const made = await madeIn(station, target);
    expect(made).toMatchObject({
      file: target,
      fileName: 'depot.zip',
      record: { size: before.length },
      removed: 0,
    });
    expect(made.pictures).toBeGreaterThan(0);
    expect((await readFile(target)).length).toBe(made.bytes);

    const empty = await testStation({}, station.clock);
    const backup = await ready(empty, target);
    expect(backup).toMatchObject({
      stationName: 'Harrow Point depot',
      record: made.record,
      devices: 44,
      pictures: made.pictures,
      picturesLost: 0,
    });
    expect(backup.comparison).toBeUndefined();
    expect(await empty.expectOutput('restore.run', { job: backup.job })).toEqual({});
    await empty.expectOutput('session.sign-in', { badge: demo.administrator });
    const after = await eventLines(empty);
    expect(after.slice(0, before.length)).toEqual(before);
    expect(JSON.parse(after.at(-1)!).event).toMatchObject({
      type: 'record.restored',
      fileName: 'depot.zip',
      record: made.record,
    });
    expect(await empty.expectOutput('ledger.verify', {})).toMatchObject({ sound: true, faults: [] });
    const { pictures } = await empty.expectOutput('device.pictures', { benchId });
    expect(pictures.map(({ state }) => state)).toEqual(['kept']);
    // The PIN came along: it is kept beside the record, and a restored station is of no use without it.
    expect(await empty.call('record.amendable', { benchId })).toMatchObject({ ok: true });
    expect(await readdir(join(empty.folder, 'under-way')).catch(() => [])).toEqual([]);
  });

  test('goes into the chosen folder by itself once a day, and the ones that are not kept go', async () => {
    const station = await asAdministrator(await demoStation());
    const backupFolder = join(await temporaryFolder(), 'backups');
    const checkpointFolder = join(await temporaryFolder(), 'stick');
    expect(await station.expectOutput('keeping.show', {})).toMatchObject({
      state: 'not set up',
      folder: { state: 'not chosen' },
    });
    await station.station.keep();
    const keeping = { backupFolder, keepDays: 2, keepMonths: 0, checkpointFolder };
    await station.expectOutput('keeping.set', { keeping });
    const sizes: number[] = [];
    for (let day = 0; day < 4; day += 1) {
      await station.station.keep();
      await station.station.keep();
      const shown = await station.expectOutput('keeping.show', {});
      expect(shown.state).toBe('kept');
      sizes.push(shown.folder.state === 'there' ? shown.folder.backups.length : -1);
      station.clock.advance({ days: 1 });
    }
    expect(sizes).toEqual([1, 2, 2, 2]);
    const events = (await eventLines(station)).map((line) => JSON.parse(line));
    expect(events.filter(({ event }) => event.type === 'backup.made')).toHaveLength(4);
    expect(
      events.filter(({ event }) => event.type === 'backup.made').every(({ by }) => by === 'station'),
    ).toBe(true);
    // The checkpoint on the stick covers what it was written over, and the record still goes on from it.
    const [name] = (await readdir(checkpointFolder)).filter((each) => each.endsWith('.checkpoint'));
    const checkpoint = await readFile(join(checkpointFolder, name!), 'utf8');
    expect(await station.expectOutput('ledger.verify', { checkpoint })).toMatchObject({ sound: true });
  });

  test('that did not succeed for three days shows, with the reason, and the next one that succeeds ends that', async () => {
    const station = await asAdministrator(await demoStation());
    const backupFolder = join(await temporaryFolder(), 'stick');
    await station.expectOutput('keeping.set', { keeping: { backupFolder, keepDays: 5, keepMonths: 5 } });
    await station.station.keep();
    const away = `${backupFolder}-away`;
    await cp(backupFolder, away, { recursive: true });
    await rm(backupFolder, { recursive: true });
    for (let day = 0; day < 3; day += 1) {
      station.clock.advance({ days: 1 });
      await station.station.keep();
    }
    expect(await station.expectOutput('station.status', {})).toMatchObject({ backup: 'overdue' });
    const shown = await station.expectOutput('keeping.show', {});
    expect(shown.trouble?.sentence).toMatch(/Connect its disk/);
    expect(shown.folder.state).toBe('not there');
    // An unplugged disk is not taken for an empty folder: nothing was made in its place.
    await expect(access(backupFolder)).rejects.toThrow();
    await cp(away, backupFolder, { recursive: true });
    await station.station.keep();
    expect((await station.expectOutput('keeping.show', {})).state).toBe('overdue');
    station.clock.advance({ seconds: 3600 });
    await station.station.keep();
    const after = await station.expectOutput('keeping.show', {});
    expect(after.state).toBe('kept');
    expect(after.trouble).toBeUndefined();
  });

  test('is consistent while the station goes on recording, and what comes after is not in it', async () => {
    const station = await asAdministrator(await demoStation());
    const target = join(await temporaryFolder(), 'busy.zip');
    const [{ job }, second] = await Promise.all([
      station.expectOutput('backup.make', { file: target }),
      station.expectError('backup.make', {}),
    ]);
    expect(second).toMatchObject({ code: 'backup-under-way' });
    for (let n = 0; n < 20; n += 1) await addUser(station, `BUSY${100 + n}`);
    const end = await ended(() => station.expectOutput('backup.status', { job }));
    expect(end).toMatchObject({ state: 'made' });
    const { comparison } = await ready(station, target);
    expect(comparison).toMatchObject({ onlyInBackup: { events: 0 } });
    expect(comparison!.same).toBe(end.state === 'made' ? end.record.size : -1);
    expect(comparison!.onlyHere.events).toBeGreaterThan(0);
  });

  test('is refused where it would be worth nothing, or would take the place of something', async () => {
    const station = await asAdministrator(await demoStation());
    const set = (backupFolder: string) =>
      station.expectError('keeping.set', { keeping: { backupFolder, keepDays: 5, keepMonths: 5 } });
    expect(await set(join(station.folder, 'backups'))).toMatchObject({
      code: 'backup-folder-in-data-folder',
      field: 'backupFolder',
    });
    expect(await set('backups')).toMatchObject({ code: 'backup-folder-not-absolute' });
    expect(await backupEnd(station)).toMatchObject({ state: 'refused', code: 'keeping-not-set' });
    const taken = join(await temporaryFolder(), 'taken.zip');
    await writeFile(taken, 'somebody’s own file');
    expect(await backupEnd(station, taken)).toMatchObject({ state: 'refused', code: 'backup-file-exists' });
    expect(await readFile(taken, 'utf8')).toBe('somebody’s own file');
    expect(await backupEnd(station, 'depot.zip')).toMatchObject({
      state: 'refused',
      code: 'backup-folder-not-absolute',
    });
  });

  test('canceled leaves nothing behind', async () => {
    const station = await asAdministrator(await demoStation());
    const folder = await temporaryFolder();
    const { job } = await station.expectOutput('backup.make', { file: join(folder, 'depot.zip') });
    await station.expectOutput('backup.cancel', { job });
    expect(await ended(() => station.expectOutput('backup.status', { job }))).toMatchObject({
      state: 'refused',
      code: 'backup-canceled',
    });
    expect(await readdir(folder)).toEqual([]);
    expect(await readdir(join(station.folder, 'under-way'))).toEqual([]);
  });

  test('of a record that was changed behind the program is refused, and earlier backups stay', async () => {
    const station = await asAdministrator(await demoStation());
    const backupFolder = join(await temporaryFolder(), 'stick');
    await station.expectOutput('keeping.set', { keeping: { backupFolder, keepDays: 1, keepMonths: 0 } });
    await madeIn(station);
    const names = (await readdir(backupFolder)).toSorted();
    await station.close();
    await tamper(station.folder, (database) =>
      database.exec(
        `update event set bytes = cast(replace(cast(bytes as text), '"on":"2', '"on":"1') as blob) where seq = 5`,
      ),
    );
    const again = await asAdministrator(await station.reopen());
    again.clock.advance({ days: 1 });
    expect(await backupEnd(again)).toMatchObject({ state: 'refused', code: 'backup-record-unsound' });
    expect((await readdir(backupFolder)).toSorted()).toEqual(names);
  });

  test('to a disk that fills up is refused with a sentence, leaves nothing half-written, and works when there is room', async (context) => {
    const disk = await requireSmallDisk(context, 8 * 1024);
    try {
      const station = await asAdministrator(await demoStation());
      const backupFolder = join(disk.folder, 'backups');
      await station.expectOutput('keeping.set', { keeping: { backupFolder, keepDays: 5, keepMonths: 5 } });
      const ballast = join(disk.folder, 'ballast');
      await writeFile(ballast, Buffer.alloc(8000 * 1024));
      expect(await backupEnd(station)).toMatchObject({ state: 'refused', code: 'disk-full' });
      const left = (await readdir(backupFolder)).filter((name) => /\.(zip|part)$/.test(name));
      expect(left).toEqual([]);
      expect(await station.expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
      await rm(ballast);
      await madeIn(station);
    } finally {
      await disk.remove();
    }
  });
});

describe('a restore', () => {
  test('shows first what would be set aside, asks for the PIN, keeps the former record, and signs everybody out', async () => {
    const station = await asAdministrator(await demoStation());
    const target = join(await temporaryFolder(), 'morning.zip');
    const made = await madeIn(station, target);
    await addUser(station, 'LATE101');
    const lines = await eventLines(station);
    const backup = await ready(station, target);
    expect(backup.comparison).toMatchObject({
      same: made.record.size,
      here: { size: lines.length },
      onlyHere: {
        events: lines.length - made.record.size,
        signedInspections: 0,
        from: '2026-03-10',
        to: '2026-03-10',
      },
      onlyInBackup: { events: 0, signedInspections: 0 },
    });
    expect(await station.expectError('restore.run', { job: backup.job, pin: '000111' })).toMatchObject({
      code: 'pin-wrong',
    });
    // The wrong PIN is recorded as such, and goes with the former record; nothing else has happened.
    const before = await eventLines(station);
    expect(before.slice(0, lines.length)).toEqual(lines);
    expect(before.slice(lines.length).map((line) => JSON.parse(line).event.type)).toEqual([
      'person.pin-refused',
    ]);
    const { aside } = await station.expectOutput('restore.run', { job: backup.job, pin: demo.pin });
    expect(await station.expectOutput('station.status', {})).not.toHaveProperty('person');
    await asAdministrator(station);
    const after = await eventLines(station);
    expect(after.slice(0, made.record.size)).toEqual(lines.slice(0, made.record.size));
    expect(JSON.parse(after.at(-1)!)).toMatchObject({
      by: 'P001',
      event: { type: 'record.restored', replaced: { size: before.length, same: made.record.size } },
    });
    expect(await station.expectError('session.sign-in', { badge: 'LATE101' })).toMatchObject({
      code: 'badge-unknown',
    });
    expect(await station.expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
    // The former record is whole where it was set aside.
    await station.close();
    const former = await testStation({ folder: join(station.folder, aside!) }, station.clock);
    await asAdministrator(former);
    expect((await eventLines(former)).slice(0, before.length)).toEqual(before);
    await former.close();
  });

  test('is not made where something was recorded since the comparison', async () => {
    const station = await asAdministrator(await demoStation());
    const target = join(await temporaryFolder(), 'depot.zip');
    await madeIn(station, target);
    const backup = await ready(station, target);
    await addUser(station, 'LATE102');
    expect(await station.expectError('restore.run', { job: backup.job, pin: demo.pin })).toMatchObject({
      code: 'restore-outdated',
    });
  });

  test('of another station goes only into an empty folder', async () => {
    const other = await asAdministrator(await demoStation());
    const target = join(await temporaryFolder(), 'other.zip');
    await madeIn(other, target);
    const station = await testStation();
    await station.expectOutput('station.setup', {
      name: 'Cold Ridge depot',
      timeZone: 'America/Denver',
      lengthUnit: 'ft',
      administrator: { name: 'Mara Quill', badge: 'CR20011', pin: '602214' },
    });
    await station.expectOutput('session.sign-in', { badge: 'CR20011' });
    expect((await opened(station, target)).end).toMatchObject({
      state: 'refused',
      code: 'restore-other-station',
    });
  });

  test('is for an administrator, once there is a station', async () => {
    const station = await demoStation();
    expect(await station.expectError('restore.open', { file: '/any.zip' })).toMatchObject({
      code: 'role-needed',
    });
    await station.expectOutput('session.sign-out', {});
    expect(await station.expectError('restore.open', { file: '/any.zip' })).toMatchObject({
      code: 'sign-in-needed',
    });
    expect(await station.expectError('restore.run', { job: 1 })).toMatchObject({ code: 'sign-in-needed' });
  });

  test('of what is no backup, or a damaged one, is refused, and nothing is changed', async () => {
    const station = await asAdministrator(await demoStation());
    const folder = await temporaryFolder();
    const target = join(folder, 'depot.zip');
    await madeIn(station, target);
    const whole = await readFile(target);
    const before = await eventLines(station);
    const refusedWith = async (name: string, bytes: Uint8Array): Promise<string> => {
      await writeFile(join(folder, name), bytes);
      const { end } = await opened(station, join(folder, name));
      if (end.state !== 'refused') throw new Error(`${name} was taken for a backup.`);
      return end.code;
    };
    expect(await refusedWith('text.zip', Buffer.from('no archive at all'))).toBe('backup-not-readable');
    expect(await refusedWith('empty.zip', Buffer.alloc(0))).toBe('backup-not-readable');
    expect(await refusedWith('half.zip', whole.subarray(0, whole.length / 2))).toBe('backup-not-readable');
    expect((await opened(station, join(folder, 'not-there.zip'))).end).toMatchObject({
      state: 'refused',
      code: 'backup-not-readable',
    });
    const damages = ['backup-not-readable', 'backup-damaged', 'backup-record-unsound'];
    for (let n = 1; n < 40; n += 1) {
      const bytes = Buffer.from(whole);
      const at = Math.floor((n / 40) * whole.length);
      bytes[at] = bytes[at]! ^ 0x10;
      expect(damages).toContain(await refusedWith('damaged.zip', bytes));
    }
    await mkdir(join(folder, 'a-folder.zip'));
    expect((await opened(station, join(folder, 'a-folder.zip'))).end).toMatchObject({
      code: 'backup-not-readable',
    });
    expect(await eventLines(station)).toEqual(before);
    expect(await readdir(join(station.folder, 'under-way'))).toEqual([]);
  });
});
