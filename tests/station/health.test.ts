/** The look over the station, against what really happens to a bench: disks, clocks, printers, files and bytes. */
import { cp, mkdir, open, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { HealthKey } from '../../src/domain/health/finding.ts';
import { learningText } from '../../src/domain/scanner/learn-scanner.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { checkAssets } from '../../src/station/health/asset-check.ts';
import { examineWithoutRecord } from '../../src/station/health/examine.ts';
import type { Surroundings } from '../../src/station/health/surroundings.ts';
import { tamper } from '../ledger/sqlite-places.ts';
import { requireIppEverywherePrinter, startIppEverywherePrinter } from '../printing/debian-printers.ts';
import { typedKeys } from '../support/keyboards.ts';
import { requireSmallDisk } from '../support/small-disk.ts';
import {
  demo,
  demoStation,
  TestClock,
  type TestStation,
  temporaryFolder,
  testStation,
} from '../support/station-fixture.ts';

const ended = async ({ expectOutput }: Pick<TestStation, 'expectOutput'>, job: number) => {
  for (;;) {
    const status = await expectOutput('health.status', { job });
    if (status.state !== 'working') return status;
    await wait(10);
  }
};

const looked = async (station: Pick<TestStation, 'expectOutput'>) => {
  const { job } = await station.expectOutput('health.start', {});
  const end = await ended(station, job);
  if (end.state !== 'examined') throw new Error(end.sentence);
  return end.findings;
};

/** What was found of a subject, as `state: key`. */
const of = async (station: Pick<TestStation, 'expectOutput'>, subject: string): Promise<readonly string[]> =>
  (await looked(station))
    .filter((found) => found.subject === subject)
    .map(({ state, says }) => `${state}: ${says}`);

const administered = async (): Promise<TestStation> => {
  const station = await demoStation();
  await station.expectOutput('session.sign-in', { badge: demo.administrator });
  return station;
};

/** A label printer of 100 × 50 mm in the configuration form of ippeveprinter. */
const labels = `
ATTR keyword media-supported custom_100x50mm_100x50mm
ATTR keyword media-ready custom_100x50mm_100x50mm
ATTR keyword media-default custom_100x50mm_100x50mm
ATTR collection media-size-supported {
  MEMBER integer x-dimension 10000
  MEMBER integer y-dimension 5000
}
`;

const folderPrinter = (folder: string) => ({
  settings: {
    kind: 'folder' as const,
    name: folder,
    folder,
    stock: { widthMm: 100, heightMm: 50 },
    withPicture: false,
  },
  tagKinds: ['status' as const],
});

describe('the look over the station', () => {
  test('finds nothing wrong with the demo on a sound PC, tells every subject of the station, and needs nobody signed in', async () => {
    const station = await demoStation();
    await station.expectOutput('session.sign-out', {});
    const findings = await looked(station);
    expect(findings.filter(({ state }) => state === 'wrong')).toEqual([]);
    expect([...new Set(findings.map(({ subject }) => subject))].sort()).toEqual(
      [
        'runtime shell browser page assets memory disk record checkpoints backups clock printers scanner faults',
      ]
        .flatMap((names) => names.split(' '))
        .concat('data folder')
        .sort(),
    );
    for (const { found, state, todo } of findings) {
      expect(found).toMatch(/^\S.*[.:]?/);
      expect(found).not.toMatch(/\{\{|undefined/);
      if (state === 'wrong' || state === 'attention') expect(todo).toMatch(/\S/);
    }
  });

  test('is stopped by whoever began it', async () => {
    const station = await demoStation();
    const { job } = await station.expectOutput('health.start', {});
    await station.expectOutput('health.cancel', { job });
    expect(await ended(station, job)).toMatchObject({ state: 'refused', code: 'health-canceled' });
    expect(await station.expectError('health.cancel', { job: 99 })).toMatchObject({
      code: 'health-job-not-known',
    });
  });

  test('tells the others where one subject cannot be looked at', async () => {
    const surroundings: Surroundings = {
      faultLog: '/nowhere/faults.log',
      look: () => Promise.reject(Object.assign(new Error('no such program'), { code: 'EIO' })),
    };
    const station = await demoStation({ surroundings });
    expect(await of(station, 'browser')).toEqual(['not known: could-not-look']);
    expect(await of(station, 'record')).toContain('good: record-fits' satisfies `good: ${HealthKey}`);
  });

  test('is asked again and again without holding anybody up', async () => {
    const station = await demoStation();
    const { job } = await station.expectOutput('health.start', {});
    const others = await Promise.all(
      Array.from({ length: 20 }, () => station.expectOutput('record.size', {})),
    );
    expect(new Set(others.map(({ events }) => events)).size).toBe(1);
    expect((await ended(station, job)).state).toBe('examined');
  });
});

describe('the clock', () => {
  test('that is set back while the station is open is told, and that the record is ahead of it', async () => {
    const station = await administered();
    await station.expectOutput('person.add', { name: 'Una Marsh', badge: 'HP10990', roles: ['user'] });
    expect((await of(station, 'clock')).filter((found) => found.includes('clock-'))).toEqual(
      (await of(station, 'clock')).filter((found) => found === 'good: clock-good'),
    );
    station.clock.advance({ days: -1 });
    expect(await of(station, 'clock')).toEqual(
      expect.arrayContaining(['wrong: clock-behind-record', 'wrong: clock-set-back']),
    );
  });

  test('that goes ahead may be a PC that slept, and is told as such', async () => {
    const station = await demoStation();
    station.clock.advance({ seconds: 2 * 3600 });
    expect(await of(station, 'clock')).toContain('attention: clock-went-ahead');
  });

  test('of a PC whose battery is flat says a year in which nobody works with this program', async () => {
    const folder = await temporaryFolder();
    const station = await testStation({ folder }, new TestClock('1999-12-31T23:00:00.000Z'));
    expect(await of(station, 'clock')).toContain('wrong: clock-year');
  });
});

describe('the disk', () => {
  test('that is nearly full, and then cannot be written, is told', async (context) => {
    const disk = await requireSmallDisk(context, 8 * 1024);
    try {
      const station = await testStation({ folder: disk.folder });
      await station.expectOutput('station.setup', {
        name: 'Cold Ridge depot',
        timeZone: 'America/Denver',
        lengthUnit: 'ft',
        administrator: { name: 'Mara Quill', badge: 'CR20011', pin: '602214' },
      });
      expect(await of(station, 'disk')).toEqual(['wrong: disk-nearly-full']);
      expect(await of(station, 'data folder')).toEqual(['good: folder-good']);
      const filler = await open(join(disk.folder, 'fill'), 'w');
      await filler.write(Buffer.alloc(9 << 20)).catch(() => undefined);
      await filler.close();
      expect(await of(station, 'data folder')).toEqual(['wrong: folder-full']);
      await rm(join(disk.folder, 'fill'));
      await station.close();
      disk.remount('ro');
      const { findings } = await examineWithoutRecord(
        {
          folder: disk.folder,
          productFolder,
          surroundings: undefined,
          language: 'en',
          now: new TestClock('2026-03-10T08:00:00.000Z').now,
        },
        undefined,
      );
      expect(findings.filter(({ subject }) => subject === 'data folder').map(({ says }) => says)).toEqual([
        'folder-not-writable',
      ]);
      disk.remount('rw');
    } finally {
      await disk.remove();
    }
  });

  test('of which something else has the name of the folder for pictures is told', async () => {
    const station = await demoStation();
    await rm(join(station.folder, 'evidence'), { recursive: true, force: true });
    await writeFile(join(station.folder, 'evidence'), '');
    expect(await of(station, 'data folder')).toEqual(['wrong: evidence-missing']);
  });
});

describe('the record', () => {
  test('in which one byte of an event was changed is told, and the word of the last verification stays beside a sound one', async () => {
    const station = await demoStation();
    expect(await of(station, 'record')).toEqual(['not known: never-verified', 'good: record-fits']);
    await station.expectOutput('ledger.verify', {});
    expect(await of(station, 'record')).toEqual(['good: record-fits', 'good: verified']);
    station.clock.advance({ days: 100 });
    expect(await of(station, 'record')).toEqual(['attention: verified-long-ago', 'good: record-fits']);
    await station.close();
    await tamper(station.folder, (database) =>
      database.exec(
        `update event set bytes = cast(replace(cast(bytes as text), 'Ilse', 'Else') as blob)
          where seq = (select min(seq) from event where instr(cast(bytes as text), 'Ilse') > 0)`,
      ),
    );
    const reopened = await testStation({ folder: station.folder }, station.clock);
    expect(await of(reopened, 'record')).toEqual(['wrong: record-not-sound']);
  });
});

describe('what is kept apart', () => {
  test('is good once it is made, and told when its disk is gone or nothing was made for days', async () => {
    const station = await administered();
    expect(await of(station, 'backups')).toEqual(['attention: backups-not-set-up']);
    expect(await of(station, 'checkpoints')).toEqual(['attention: checkpoint-nowhere']);
    const [backupFolder, checkpointFolder] = [await temporaryFolder(), await temporaryFolder()];
    await station.expectOutput('keeping.set', {
      keeping: { backupFolder, checkpointFolder, keepDays: 3, keepMonths: 0 },
    });
    await station.station.keep();
    expect(await of(station, 'checkpoints')).toEqual(['good: checkpoint-kept']);
    const backups = await of(station, 'backups');
    expect(['good: backup-good', 'attention: backup-same-disk']).toEqual(
      expect.arrayContaining([...backups]),
    );
    const { clock, folder } = station;
    clock.advance({ days: 8 });
    expect(await of(station, 'backups')).toContain('wrong: backup-overdue');
    const old = new Date(Date.parse(clock.now()) - 8 * 86_400_000);
    for (const name of await readdir(checkpointFolder)) await utimes(join(checkpointFolder, name), old, old);
    expect(await of(station, 'checkpoints')).toEqual(['attention: checkpoint-old']);
    for (const gone of [backupFolder, checkpointFolder]) await rm(gone, { recursive: true });
    expect(await of(station, 'backups')).toEqual(['wrong: backup-folder-missing']);
    expect(await of(station, 'checkpoints')).toEqual(['wrong: checkpoint-folder-missing']);
    expect(folder).not.toBe(backupFolder);
  });
});

describe('a printer', () => {
  test('whose folder is taken away is told, and the others stay', async () => {
    const station = await administered();
    const folders = [await temporaryFolder(), await temporaryFolder()];
    for (const folder of folders) await station.expectOutput('printer.save', folderPrinter(folder));
    expect(await of(station, 'printers')).toEqual(['good: printer-ready', 'good: printer-ready']);
    await rm(folders[0]!, { recursive: true });
    expect(await of(station, 'printers')).toEqual(['wrong: printer-problem', 'good: printer-ready']);
  });

  test('that takes the call and never answers is told after its time, whatever else was looked at', async () => {
    const silent = createServer(() => undefined);
    await new Promise<void>((resolve) => silent.listen(0, '127.0.0.1', resolve));
    onTestFinished(() => void silent.close());
    const address = silent.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    const station = await administered();
    await station.expectOutput('printer.save', {
      settings: {
        kind: 'ipp',
        name: 'Silent',
        address: `ipp://127.0.0.1:${port}/ipp/print`,
        stock: { widthMm: 100, heightMm: 50 },
      } as never,
      tagKinds: [],
    });
    expect(await of(station, 'printers')).toEqual([
      expect.stringMatching(/^wrong: printer-(no-answer|problem)$/),
    ]);
  }, 30_000);

  test.runIf(requireIppEverywherePrinter())('that is switched off is told', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['application/pdf'], attributes: labels });
    const station = await administered();
    await station.expectOutput('printer.save', {
      settings: {
        kind: 'ipp',
        name: 'Bench printer',
        address: printer.address,
        stock: { widthMm: 100, heightMm: 50 },
      } as never,
      tagKinds: [],
    });
    const before = await of(station, 'printers');
    await printer.kill();
    expect(await of(station, 'printers')).toEqual(['wrong: printer-problem']);
    expect(before).toEqual(['good: printer-ready']);
  });
});

describe('the scanner', () => {
  test('is known once it was learnt, and that it types for another layout is told', async () => {
    const station = await demoStation();
    expect(await of(station, 'scanner')).toEqual(['not known: scanner-not-learnt']);
    const scanOf = (computer: 'us' | 'es') => ({
      end: 'Enter' as const,
      keys: typedKeys(learningText, { scanner: 'us', computer }).map(({ key, ...stroke }, index) => ({
        ...stroke,
        text: key,
        at: index * 8,
      })),
    });
    const teach = (computer: 'us' | 'es') =>
      station.expectOutput('scanner.learn', {
        scans: [scanOf(computer), scanOf(computer), scanOf(computer)],
      });
    await teach('us');
    expect(await of(station, 'scanner')).toEqual(['good: scanner-learnt']);
    await teach('es');
    expect(await of(station, 'scanner')).toEqual(['attention: scanner-other-layout']);
  });
});

describe('the files of the program', () => {
  test('are whole as they are shipped; a changed typeface, a broken list and a missing folder are each named', async () => {
    const assets = join(await temporaryFolder(), 'assets');
    await mkdir(assets);
    for (const name of [
      'desk',
      'drawings',
      'export',
      'fonts',
      'import',
      'messages',
      'procedures',
      'programs',
    ])
      await cp(join(productFolder, 'assets', name), join(assets, name), { recursive: true });
    expect((await checkAssets(assets)).faulty).toEqual([]);
    const font = 'fonts/atkinson-hyperlegible-latin-400-normal.woff';
    const file = await open(join(assets, font), 'r+');
    await file.write(Buffer.from([0x55]), 0, 1, 5000);
    await file.close();
    await writeFile(join(assets, 'desk', 'desk.v1.json'), '{"version": 1');
    await rm(join(assets, 'messages', 'es'), { recursive: true });
    expect([...(await checkAssets(assets)).faulty].sort()).toEqual([
      'desk/desk.v1.json',
      font,
      'messages/es',
    ]);
  });
});
