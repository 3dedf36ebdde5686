/** Register, due list and return paperwork: the same rows on paper, as CSV and as a workbook, read by other programs. */
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import readWorkbook from 'read-excel-file/node';
import { describe, expect, test } from 'vitest';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { calendarDate } from '../../../src/domain/brand.ts';
import { unpackWorkbook } from '../../../src/intake/table/unpack-workbook.ts';
import type { InputOf } from '../../../src/station/contract.ts';
import {
  canReadPdf,
  endOfReport,
  infoOf,
  linesOf,
  madeReport,
  reportEnd,
  textOf,
} from '../../support/report-text.ts';
import { demo, demoStation, temporaryFolder } from '../../support/station-fixture.ts';
import { fileOf, runOf } from '../exchange/import-support.ts';

const csvOf = async (path: string): Promise<string[][]> => parse(await readFile(path), { bom: true });

const registerOf = async ({ expectOutput }: Awaited<ReturnType<typeof demoStation>>) =>
  (await expectOutput('device.list', { limit: 500 })).devices;

describe('the register', () => {
  test('says of every device as CSV what the list on the screen says', async () => {
    const station = await demoStation();
    const devices = await registerOf(station);
    const made = await madeReport(station, { of: { kind: 'register' }, format: 'csv', language: 'en' });
    const [head, ...rows] = await csvOf(made.path);
    expect(head).toEqual([
      'Bench ID',
      'Manufacturer',
      'Model',
      'Serial number',
      'Rated length',
      'Standing',
      'Last inspected',
      'Next inspection due',
    ]);
    expect(made.rows).toBe(devices.length);
    expect(rows.map(([id, , , serial, , , inspected, due]) => [id, serial, inspected, due])).toEqual(
      devices.map(({ benchId, serial, lastInspectedOn, dueOn }) => [
        formatBenchId(benchId),
        serial,
        lastInspectedOn ?? '',
        dueOn ?? '',
      ]),
    );
  });

  test('reads back from a workbook with dates that are dates', async () => {
    const station = await demoStation();
    const devices = await registerOf(station);
    const { path } = await madeReport(station, { of: { kind: 'register' }, format: 'xlsx', language: 'es' });
    const [sheet] = await readWorkbook(await readFile(path));
    const [head, ...rows] = sheet!.data;
    expect(head).toContain('Número de serie');
    expect(
      rows.map((row) => [row[0], row[3], row[7] instanceof Date ? row[7].toISOString().slice(0, 10) : null]),
    ).toEqual(devices.map(({ benchId, serial, dueOn }) => [formatBenchId(benchId), serial, dueOn ?? null]));
  });

  test('keeps a spreadsheet from computing what somebody typed', async () => {
    const station = await demoStation();
    const serials = ['=1+2"', '@SUM(A1)', '+3', '-4'];
    const quoted = serials.map((serial) => `Norvane,Lode 6,"${serial.replaceAll('"', '""')}",6 m`);
    await runOf(station, fileOf(`Maker,Model,Serial,Length\n${quoted.join('\n')}`));
    const asked: InputOf<'report.make'> = { of: { kind: 'register', standing: ['new'] }, language: 'en' };
    const { path } = await madeReport(station, { ...asked, format: 'csv' });
    const written = (await csvOf(path)).map((row) => row[3]);
    for (const serial of serials) expect(written).toContain(`'${serial}`);
    const { path: workbook } = await madeReport(station, { ...asked, format: 'xlsx' });
    const [sheet] = await readWorkbook(await readFile(workbook));
    const texts = sheet!.data.map((row) => row[3]);
    for (const serial of serials) expect(texts).toContain(serial);
    const xml = [...(await unpackWorkbook(await readFile(workbook))).values()].join('');
    expect(xml).not.toMatch(/<f[ >]/);
  });

  test.runIf(canReadPdf)('is filtered as the list on the screen is, and says by what', async () => {
    const station = await demoStation();
    const { path, rows } = await madeReport(station, {
      of: { kind: 'register', search: 'mastrun', standing: ['in service'] },
      language: 'en',
    });
    const { devices, total } = await station.expectOutput('device.list', {
      search: 'mastrun',
      standing: ['in service'],
    });
    expect(rows).toBe(total);
    const text = textOf(path);
    expect(text).toContain('Only those with “mastrun”.');
    expect(text).toContain('Only those that are: in service.');
    expect(text).toContain(`Devices: ${total}`);
    for (const { benchId, serial } of devices)
      expect(text).toContain(`${formatBenchId(benchId)} Tessaline Mastrun 30 ${serial}`);
  });
});

describe('the due list', () => {
  test('has what is due by the day, the longest due first, and all that were never inspected before', async () => {
    const station = await demoStation();
    const of = { kind: 'due', until: calendarDate('2026-09-30') } as const;
    const { path } = await madeReport(station, { of, format: 'csv', language: 'en' });
    const [, ...rows] = await csvOf(path);
    const devices = await registerOf(station);
    const expected = [
      ...devices.filter(({ standing }) => standing === 'new').map(({ benchId }) => ['', benchId]),
      ...devices
        .filter(({ standing, dueOn }) => standing === 'in service' && dueOn! <= '2026-09-30')
        .toSorted((a, b) => a.dueOn!.localeCompare(b.dueOn!))
        .map(({ benchId, dueOn }) => [dueOn, benchId]),
    ];
    expect(rows.map(([due, , id]) => [due, id!.replace('-', '')])).toEqual(expected);
    expect(rows.length).toBeGreaterThan(5);
    const stateOf = new Map(rows.map(([, state, id]) => [id!.replace('-', ''), state]));
    for (const { benchId, dueState } of devices)
      if (dueState === 'overdue') expect(stateOf.get(benchId)).toBe('Overdue');
  });
});

describe('return paperwork', () => {
  const held = async () => {
    const station = await demoStation();
    const { devices } = await station.expectOutput('device.list', { standing: ['quarantined'] });
    const norvane = devices.filter(({ manufacturer }) => manufacturer === 'Norvane');
    return { station, devices, norvane: norvane.map(({ benchId }) => benchId) };
  };

  test.runIf(canReadPdf)(
    'lists each device with serial number and reasons, what is asked and where it goes',
    async () => {
      const { station, norvane } = await held();
      expect(norvane.length).toBeGreaterThan(1);
      const { path } = await madeReport(station, {
        of: { kind: 'return', benchIds: norvane, ask: 'repair' },
        language: 'both',
      });
      const text = textOf(path);
      expect(text).toContain('Out of service: do not use / Fuera de servicio: no usar');
      expect(text).toContain('Repair each device, or say that it cannot be repaired.');
      for (const benchId of norvane) {
        const { device } = await station.expectOutput('device.show', { benchId });
        expect(text).toContain(device.serial);
        expect(text).toContain(formatBenchId(benchId));
        expect(text).toContain(device.modelSheet.manufacturerContact);
        for (const { sentence } of device.reasons) expect(text).toContain(`• ${sentence.en} ${sentence.es}`);
      }
      expect(text).not.toMatch(/\b(fit for use|safe to use|pass|in service:)\b/i);
      expect(text).not.toMatch(/\bapto\b/i);
    },
  );

  test.runIf(canReadPdf)(
    'of a return batch bears its number and the declaration of condition and contamination, or lines to fill in',
    async () => {
      const { station, norvane } = await held();
      const textWith = async (more: object) => {
        const of = { kind: 'return' as const, benchIds: norvane, batch: 7, ...more };
        const { path } = await madeReport(station, { of, language: 'both' });
        return textOf(path);
      };
      const blank = await textWith({});
      expect(blank).toContain('Return batch / Lote de devolución 7');
      expect(blank).toContain('Declaration of condition and contamination');
      expect(blank).not.toContain('Hook struck a girder.');
      const declared = await textWith({
        declaration: { condition: 'Hook struck a girder.', contamination: 'cleaned' },
      });
      expect(declared).toContain('Hook struck a girder.');
      expect(declared).toContain('cleaned of what was on them / limpiados de lo que tenían');
    },
    120_000,
  );

  test('is refused for a device that is not held, for several manufacturers, and without a contact', async () => {
    const { station, devices, norvane } = await held();
    const codeOf = async (benchIds: typeof norvane) => {
      const end = await reportEnd(station, { of: { kind: 'return', benchIds }, language: 'en' });
      return end.state === 'refused' ? end.code : end.state;
    };
    const inService = await station.expectOutput('device.list', { standing: ['in service'], limit: 1 });
    expect(await codeOf([inService.devices[0]!.benchId])).toBe('device-not-held');
    expect(await codeOf(devices.map(({ benchId }) => benchId))).toBe('return-several-makers');
    await runOf(
      station,
      fileOf(`Maker,Model,Serial,Length,Material,Diameter,Capacity,Standard,Load indicator,Status
Orlen Reach,OR 8,OR-1,8 m,stainless,4.8 mm,59-140 kg,EN 360:2002,yes,out of service`),
    );
    const { devices: fresh } = await station.expectOutput('device.list', { search: 'OR-1' });
    expect(await codeOf([fresh[0]!.benchId])).toBe('manufacturer-contact-missing');
  });
});

describe('the file of a report', () => {
  test('has the name that was asked for, and no other ending than that of its form', async () => {
    const station = await demoStation();
    const folder = await temporaryFolder();
    const file = join(folder, 'new', 'list.csv');
    const request = { of: { kind: 'register' }, format: 'csv', language: 'en' } as const;
    expect((await madeReport(station, { ...request, file })).path).toBe(file);
    for (const wrong of [join(folder, 'list.pdf'), 'list.csv', join(folder, 'csv')])
      expect(await reportEnd(station, { ...request, file: wrong })).toMatchObject({
        code: 'report-file-name',
      });
    expect(await readdir(folder)).toEqual(['new']);
  });

  test('never takes the place of one that lies in the reports already', async () => {
    const station = await demoStation();
    const request = { of: { kind: 'register' }, format: 'csv', language: 'en' } as const;
    const first = await madeReport(station, request);
    await writeFile(first.path, 'mine now');
    const second = await madeReport(station, request);
    expect(second.path).not.toBe(first.path);
    expect(await readFile(first.path, 'utf8')).toBe('mine now');
  });

  test('is refused with a sentence where nothing can be written, and leaves nothing half-done', async () => {
    const station = await demoStation();
    const folder = await temporaryFolder();
    await writeFile(join(folder, 'a file'), '');
    const request = { of: { kind: 'register' }, format: 'csv', language: 'en' } as const;
    const end = await reportEnd(station, { ...request, file: join(folder, 'a file', 'list.csv') });
    expect(end).toMatchObject({ state: 'refused', code: 'folder-not-writable' });
    expect(await readdir(folder)).toEqual(['a file']);
  });

  test('is not for a user to make', async () => {
    const { expectOutput, expectError } = await demoStation();
    await expectOutput('session.sign-in', { badge: demo.user });
    const refused = await expectError('report.make', { of: { kind: 'register' }, language: 'en' });
    expect(refused.code).toBe('role-needed');
  });

  test('of an inspection or a device is a PDF alone', async () => {
    const station = await demoStation();
    const { devices } = await station.expectOutput('device.list', { limit: 1 });
    const of = { kind: 'device', benchId: devices[0]!.benchId } as const;
    expect(await reportEnd(station, { of, format: 'xlsx', language: 'en' })).toMatchObject({
      code: 'report-format-not-offered',
    });
  });
});

describe('a register of 3,000 devices', () => {
  const large = async () => {
    const station = await demoStation();
    const rows = Array.from(
      { length: 3000 },
      (_, row) => `Norvane,Lode 6,BIG-${String(row).padStart(4, '0')},6 m`,
    );
    await runOf(station, fileOf(`Maker,Model,Serial,Length\n${rows.join('\n')}`));
    return station;
  };

  test('comes out whole with its progress, and can be cancelled, leaving nothing', async () => {
    const station = await large();
    const request = { of: { kind: 'register', search: 'BIG' }, language: 'en' } as const;
    const { job } = await station.expectOutput('report.make', request);
    const seen: number[] = [];
    for (;;) {
      const status = await station.expectOutput('report.status', { job });
      if (status.state !== 'working') break;
      if (status.of > 0 && status.done !== seen.at(-1)) seen.push(status.done);
      await new Promise((resolve) => setTimeout(resolve, 2));
    }
    const end = await endOfReport(station, job);
    if (end.state !== 'made') throw new Error(end.sentence);
    expect(end.rows).toBe(3000);
    expect(seen.length).toBeGreaterThan(3);
    expect(seen).toEqual(seen.toSorted((a, b) => a - b));
    if (canReadPdf) {
      expect(Number(infoOf(end.path).Pages)).toBe(end.pages);
      const serials = linesOf(end.path).flatMap((line) => /BIG-\d{4}/.exec(line) ?? []);
      expect(new Set(serials).size).toBe(3000);
    }
    const again = await station.expectOutput('report.make', request);
    await station.expectOutput('report.cancel', { job: again.job });
    expect(await endOfReport(station, again.job)).toMatchObject({
      state: 'refused',
      code: 'report-canceled',
    });
    expect(await readdir(join(station.folder, 'reports'))).toHaveLength(1);
  });
});
