/** The export of everything: the exact events, tables that say what they are, pictures, and a fleet that comes back elsewhere. */
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import {
  demo,
  demoStation,
  TestClock,
  type TestStation,
  temporaryFolder,
  testStation,
} from '../../support/station-fixture.ts';
import { agreed, fileOf, fleet, previewOf, runOf } from './import-support.ts';

const exportTo = async ({ expectOutput }: TestStation, folder?: string) => {
  const { job } = await expectOutput('record.export', folder === undefined ? {} : { folder });
  for (;;) {
    const status = await expectOutput('export.status', { job });
    if (status.state !== 'working') return status;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
};

const exported = async (station: TestStation, folder?: string) => {
  const status = await exportTo(station, folder);
  if (status.state !== 'exported') throw new Error(JSON.stringify(status));
  return status;
};

const rowsOf = async (folder: string, table: string): Promise<Record<string, string>[]> =>
  parse(await readFile(join(folder, `${table}.csv`)), { columns: true, bom: true });

const sha256 = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

const emptyStation = async () => {
  const station = await testStation({}, new TestClock('2026-11-25T08:00:00.000Z'));
  await station.expectOutput('station.setup', {
    name: 'Empty depot',
    timeZone: 'Europe/Madrid',
    lengthUnit: 'm',
    administrator: { name: 'Ola Fern', badge: 'EMPTY-001', pin: demo.pin },
  } as never);
  await station.expectOutput('session.sign-in', { badge: 'EMPTY-001' });
  return station;
};

describe('an export', () => {
  test('holds the exact events, a table for each kind of thing, and the hash of every file', async () => {
    const station = await demoStation();
    await runOf(station, fileOf(fleet));
    const pictureBase64 = (
      await sharp({ create: { width: 40, height: 30, channels: 3, background: '#888' } })
        .png()
        .toBuffer()
    ).toString('base64');
    await station.expectOutput('device.keep-picture', {
      benchId: 'GJQ81T5WX2',
      of: 'marking',
      pictureBase64,
    } as never);
    const { folder, events, rootHash, pictures, picturesLost } = await exported(station);
    expect(folder.startsWith(join(station.folder, 'exports'))).toBe(true);
    // The one of the marking, and the two that are drawn for the invented depot.
    expect([pictures, picturesLost]).toEqual([3, 0]);
    const ledger = await station.expectOutput('ledger.export', {});
    const written = await readFile(join(folder, 'events.jsonl'));
    expect(written.equals(await readFile(ledger.path))).toBe(true);
    expect([events, rootHash]).toEqual([ledger.events, ledger.rootHash]);
    const manifest = JSON.parse(await readFile(join(folder, 'manifest.json'), 'utf8'));
    const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile() && entry.name !== 'manifest.json')
      .map((entry) => join(entry.parentPath, entry.name));
    expect(manifest.files).toHaveLength(names.length);
    for (const file of manifest.files as { path: string; sha256: string }[]) {
      expect(sha256(await readFile(join(folder, file.path)))).toBe(file.sha256);
      if (file.path.startsWith('evidence/')) expect(file.path).toBe(`evidence/${file.sha256}.jpg`);
    }
    const { devices } = await station.expectOutput('device.list', { limit: 200 });
    const rows = await rowsOf(folder, 'devices');
    expect(rows).toHaveLength(devices.length);
    expect(await rowsOf(folder, 'declared-inspections')).toHaveLength(2);
    const signed = (await readFile(join(folder, 'events.jsonl'), 'utf8')).match(/"inspection\.signed"/g);
    const inspections = await rowsOf(folder, 'inspections');
    expect(inspections.filter(({ State }) => State === 'signed')).toHaveLength(signed!.length);
    for (const table of [
      'model-sheets',
      'people',
      'answers',
      'findings',
      'readings',
      'pictures',
      'reasons',
      'tags',
    ])
      expect((await rowsOf(folder, table)).length, table).toBeGreaterThan(0);
    expect(await readFile(join(folder, 'people.csv'), 'utf8')).not.toContain(demo.pin);
  });

  test('says who had a device, from when and until when, and who still has it', async () => {
    const station = await demoStation();
    const { expectOutput } = station;
    await expectOutput('session.sign-in', { badge: demo.attendant });
    const [back, out] = ['MM68GV91MM', 'AFZQ45HXXZ'];
    await expectOutput('custody.check-out', {
      userId: 'P006',
      benchIds: [back, out],
      expectedOn: '2026-03-12',
      preUse: { language: 'en' },
    } as never);
    await expectOutput('custody.check-in', {
      benchId: back,
      answers: ['fall', 'exposure', 'questionable'].map((question) => ({ question, said: 'no' })),
    } as never);
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const { folder } = await exported(station);
    const went = { User: 'Nadia Solheim', Since: '2026-03-10', 'Expected back on': '2026-03-12' };
    const rows = await rowsOf(folder, 'custody');
    expect(rows.filter(({ User }) => User === went.User)).toMatchObject([
      { 'Bench ID': 'MM68G-V91MM', ...went, 'Ended on': '2026-03-10', 'Ended how': 'checked in' },
      { 'Bench ID': 'AFZQ4-5HXXZ', ...went, 'Ended on': '', 'Ended how': '' },
    ]);
  });

  test('describes every column that its tables have, and the events in JSON Schema', async () => {
    const station = await demoStation();
    const { folder } = await exported(station);
    const schema = JSON.parse(await readFile(join(folder, 'schema.json'), 'utf8'));
    for (const { file, columns } of schema.tables) {
      const [head] = parse(await readFile(join(folder, file)), { bom: true, to: 1 }) as string[][];
      expect(head).toEqual(columns.map(({ heading }: { heading: string }) => heading));
      const rows = await rowsOf(folder, file.replace('.csv', ''));
      for (const { heading, type } of columns as { heading: string; type: string }[]) {
        const values = rows.map((row) => row[heading] ?? '').filter((value) => value !== '');
        if (type.includes(' | ')) for (const value of values) expect(type.split(' | ')).toContain(value);
        if (type === 'date') for (const value of values) expect(value).toMatch(/^\d{4}-\d\d-\d\d$/);
        if (type === 'integer') for (const value of values) expect(value).toMatch(/^\d+$/);
      }
    }
    const kinds = schema.events.schema.properties.event.oneOf.map(
      (kind: { properties: { type: { const: string } } }) => kind.properties.type.const,
    );
    expect(kinds).toContain('inspection.declared');
    const recorded = (await readFile(join(folder, 'events.jsonl'), 'utf8')).trim().split('\n');
    for (const line of recorded) expect(kinds).toContain(JSON.parse(line).event.type);
  });

  test('of devices imports into an empty station as the same devices, out of service where they were', async () => {
    const station = await testStation({}, new TestClock('2026-11-24T08:00:00.000Z'));
    await station.expectOutput('station.load-demo', {});
    await station.expectOutput('session.sign-in', { badge: demo.inspector });
    await runOf(station, fileOf(fleet));
    const { folder } = await exported(station);
    const bytes = await readFile(join(folder, 'devices.csv'));
    const other = await emptyStation();
    const request = {
      fileName: 'devices.csv',
      contentBase64: bytes.toString('base64'),
      withoutUnknownPeople: true,
    };
    const preview = await previewOf(other, request);
    expect(preview.columns.filter(({ because }) => because === 'contents')).toEqual([]);
    // Whoever takes the list in is no competent person: nothing but the types of use speaks against it, and they stay undetermined.
    expect(new Set(preview.faults.map(({ heading }) => heading))).toEqual(new Set(['Type of use']));
    const columns = agreed(preview)?.map((each) =>
      each.meaning === 'typeOfUse' ? { column: each.column, meaning: 'ignore' as const } : each,
    );
    expect(await runOf(other, request, columns)).toMatchObject({ state: 'imported' });
    const cardsOf = async ({ expectOutput }: TestStation) => {
      const { devices } = await expectOutput('device.list', { limit: 200 });
      const cards = [];
      for (const { benchId } of devices) cards.push((await expectOutput('device.show', { benchId })).device);
      return cards.toSorted((a, b) => a.benchId.localeCompare(b.benchId));
    };
    const before = await cardsOf(station);
    const after = await cardsOf(other);
    const facts = (cards: typeof before) =>
      cards.map(
        ({
          benchId,
          manufacturer,
          model,
          serial,
          ratedLengthM,
          dateOfManufacture,
          otherCodes,
          modelSheet,
        }) => ({
          benchId,
          manufacturer,
          model,
          serial,
          ratedLengthM,
          dateOfManufacture,
          otherCodes,
          capacityKg: modelSheet.capacityKg,
          lifelineDiameterMm: modelSheet.lifelineDiameterMm,
        }),
      );
    expect(facts(after)).toEqual(facts(before));
    expect(after.filter(({ standing }) => standing === 'quarantined').map(({ benchId }) => benchId)).toEqual(
      before.filter(({ standing }) => standing === 'quarantined').map(({ benchId }) => benchId),
    );
    expect(after.filter(({ standing }) => standing === 'in service')).toEqual([]);
  });

  test('says where a device lies and who has it, and the place comes back elsewhere', async () => {
    const station = await testStation({}, new TestClock('2026-11-24T08:00:00.000Z'));
    const { expectOutput } = station;
    await expectOutput('station.load-demo', {});
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const [lies, out] = ['MM68GV91MM', 'AFZQ45HXXZ'];
    await expectOutput('device.store', { benchId: lies, place: 'SHELF3' } as never);
    const preUse = { language: 'en' };
    await expectOutput('custody.check-out', { userId: 'P006', benchIds: [out], preUse } as never);
    const { folder } = await exported(station);
    const rows = await rowsOf(folder, 'devices');
    const of = (benchId: string) => rows.find((row) => row['Bench ID'] === benchId);
    expect(of('MM68G-V91MM')).toMatchObject({ 'Place in store': 'SHELF3', 'Out with': '' });
    expect(of('AFZQ4-5HXXZ')).toMatchObject({ 'Out with': 'Nadia Solheim' });

    const other = await emptyStation();
    const contentBase64 = (await readFile(join(folder, 'devices.csv'))).toString('base64');
    const request = { fileName: 'devices.csv', contentBase64, withoutUnknownPeople: true };
    const columns = agreed(await previewOf(other, request))?.map((each) =>
      each.meaning === 'typeOfUse' ? { column: each.column, meaning: 'ignore' as const } : each,
    );
    expect(columns?.map(({ meaning }) => meaning)).toContain('place');
    expect(await runOf(other, request, columns)).toMatchObject({ state: 'imported' });
    const { device } = await other.expectOutput('device.show', { benchId: lies } as never);
    expect(device).toMatchObject({ stored: { place: 'SHELF3' } });
    expect(device.custody).toBeUndefined();
  });

  test('of a place that is no code of one is a fault of its row', async () => {
    const station = await demoStation();
    const list = `Maker;Model;Serial;Length;Place in store
Norvane;Lode 6;NEW-1;6 m;cage2
Norvane;Lode 6;NEW-2;6 m;Third shelf, left`;
    const { faults } = await previewOf(station, fileOf(list));
    expect(faults.map(({ row, heading }) => [row, heading])).toEqual([[3, 'Place in store']]);
  });

  test('keeps a spreadsheet from computing what somebody typed, and gives it back as it was', async () => {
    const station = await demoStation();
    const serial = '=1+2"';
    const list = `Maker,Model,Serial,Length\nNorvane,Lode 6,"=1+2""",6 m\nNorvane,Lode 6,@SUM(A1),6 m`;
    await runOf(station, fileOf(list));
    const { folder } = await exported(station);
    const written = (await rowsOf(folder, 'devices')).map((row) => row['Serial number']);
    expect(written).toContain(`'${serial}`);
    expect(written).toContain(`'@SUM(A1)`);
    const text = await readFile(join(folder, 'devices.csv'));
    const other = await emptyStation();
    const request = { fileName: 'd.csv', contentBase64: text.toString('base64'), withoutUnknownPeople: true };
    const { devices } = await previewOf(other, request);
    expect(devices.map((device) => device.serial)).toContain(serial);
  });

  test('goes into an empty folder or a new one, and into no other', async () => {
    const station = await demoStation();
    const folder = await temporaryFolder();
    await exported(station, join(folder, 'new', 'one'));
    await mkdir(join(folder, 'empty'));
    await exported(station, join(folder, 'empty'));
    await writeFile(join(folder, 'mine.txt'), 'mine');
    expect(await exportTo(station, folder)).toMatchObject({ code: 'export-folder-not-empty' });
    expect(await exportTo(station, 'relative')).toMatchObject({ code: 'export-folder-not-empty' });
    expect(await exportTo(station, join(folder, 'mine.txt', 'below'))).toMatchObject({
      code: 'export-folder-not-empty',
    });
    expect((await readdir(folder)).sort()).toEqual(['empty', 'mine.txt', 'new']);
  });

  test('asked for twice at once goes into two folders, and into one that was named only once', async () => {
    const station = await demoStation();
    await station.expectOutput('session.sign-in', { badge: demo.administrator });
    const both = await Promise.all([exported(station), exported(station)]);
    expect(new Set(both.map(({ folder }) => folder)).size).toBe(2);
    for (const { folder } of both) expect(await readdir(folder)).toContain('manifest.json');
    const named = join(await temporaryFolder(), 'named');
    const ends = await Promise.all([exportTo(station, named), exportTo(station, named)]);
    expect(ends.map(({ state }) => state).toSorted()).toEqual(['exported', 'refused']);
    expect(await readdir(join(named, '..'))).toEqual(['named']);
  });

  test('that is canceled leaves nothing behind', async () => {
    const station = await demoStation();
    const folder = await temporaryFolder();
    const { job } = await station.expectOutput('record.export', { folder: join(folder, 'gone') });
    await station.expectOutput('export.cancel', { job });
    for (;;) {
      const status = await station.expectOutput('export.status', { job });
      if (status.state === 'working') continue;
      expect(status).toMatchObject({ state: 'refused', code: 'export-canceled' });
      break;
    }
    expect(await readdir(folder)).toEqual([]);
  });
});
