/** A fleet list through the contract: previewed, faults named, imported whole or not at all, and never taken for our own inspection. */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { demo, demoStation, type TestStation } from '../../support/station-fixture.ts';
import { agreed, endOf, fileOf, fleet, headings, previewOf, runOf } from './import-support.ts';

const headOf = async ({ expectOutput }: TestStation) => (await expectOutput('ledger.verify', {})).head;

const deviceWith = async ({ expectOutput }: TestStation, serial: string) => {
  const { devices } = await expectOutput('device.list', { search: serial, limit: 10 });
  expect(devices).toHaveLength(1);
  return (await expectOutput('device.show', { benchId: devices[0]!.benchId })).device;
};

describe('the preview of a list', () => {
  test('matches the columns by their headings, counts, and records nothing', async () => {
    const station = await demoStation();
    const before = await headOf(station);
    const preview = await previewOf(station, fileOf(fleet));
    expect(preview.columns.map(({ meaning }) => meaning)).toEqual([
      'manufacturer',
      'model',
      'serial',
      'dateOfManufacture',
      'ratedLength',
      'lifelineMaterial',
      'lifelineDiameter',
      'capacity',
      'standard',
      'loadIndicator',
      'standing',
      'inspectedOn',
      'inspectedBy',
      'inspectionResult',
      'inspectionNote',
    ]);
    expect(preview.faults).toEqual([]);
    expect(preview.counts).toEqual({ rows: 3, devices: 3, modelSheets: 1, inspections: 2, removed: 1 });
    expect(preview.importable).toBe(true);
    expect(await headOf(station)).toEqual(before);
  });

  test('names every fault with its row and column, twins in the list and in the register too', async () => {
    const station = await demoStation();
    const list = `Maker;Model;Serial;Made;Bench ID;Barcode;Length
Norvane;Lode 6;NEW-1;2023-02;;;6 m
Norvane;Lode 6;new-1;2023-02;;;6 m
Norvane;Lode 2;N2-18-1074;2018-08;;;2 m
Norvane;Lode 2;NEW-2;2018-08;GJQ81T5WX2;;2 m
Norvane;Lode 2;NEW-3;2018-08;GJQ81T5WX3;;2 m
Norvane;Lode 2;NEW-4;2018-08;;NVL2181074;2 m
Norvane;Lode 2;NEW-5;2018-08;;HP10024;2 m
Norvane;Lode 2;;2018-08;;;2 m
Norvane;Lode 2;NEW-6;2031-08;;;2 m
Norvane;Lode 2;NEW-7;32/13/2019;;;2 m
Norvane;Lode 2;NEW-8;2018-08;;;two
Norvane;Lode 99;NEW-9;2018-08;;;2 m
Norvane;Lode 2;1,2E+11;2018-08;;;2 m
Norvane;Lode 6;NEW-10;2018-08;;;6.05 m`;
    const { faults, importable } = await previewOf(station, fileOf(list));
    expect(faults.map(({ row, heading, code }) => [row, heading, code])).toEqual([
      [3, 'Serial', 'import-twin'],
      [4, 'Serial', 'serial-taken'],
      [5, 'Bench ID', 'bench-id-taken'],
      [6, 'Bench ID', 'bench-id-not-exact'],
      [7, 'Barcode', 'code-taken'],
      [8, 'Barcode', 'code-taken'],
      [9, 'Serial', 'import-no-serial'],
      [10, 'Made', 'import-date-to-come'],
      [11, 'Made', 'import-date-not-read'],
      [12, 'Length', 'import-quantity-not-read'],
      [13, 'Model', 'import-model-unknown'],
      [14, 'Serial', 'import-number-rounded'],
      [15, 'Model', 'import-length-near'],
    ]);
    expect(importable).toBe(false);
    for (const { sentence } of faults) expect(sentence).not.toMatch(/\{\{|undefined/);
  });

  test('holds a maker’s code, in either of its forms, against the model of its row', async () => {
    const station = await demoStation();
    const list = `Maker,Model,Serial,Maker's code,Length
Norvane,Lode 6,A77,(01)09520000000028(21)A77,6 m
Norvane,Lode 2,A77,010952000000002821A77,2 m`;
    const { faults } = await previewOf(station, fileOf(list));
    expect(faults.map(({ row, code }) => [row, code])).toEqual([[3, 'code-model-differs']]);
  });

  test('asks for the order of dates, the unit of lengths and what to do without a user, and guesses none', async () => {
    const station = await demoStation();
    const list = `Maker,Model,Serial,Made,Length,User
Norvane,Lode 6,IMQ-0001,03/04/2023,6,Teo Arandal
Norvane,Lode 6,IMQ-0002,05/04/2023,6,Nobody Here`;
    const request = fileOf(list);
    const preview = await previewOf(station, request);
    expect(preview.questions).toEqual([
      { kind: 'date order', column: 3, fitting: ['dmy', 'mdy'], examples: ['03/04/2023', '05/04/2023'] },
      { kind: 'unit', column: 4, examples: ['6'] },
      { kind: 'unknown people', count: 1, examples: ['Nobody Here'] },
    ]);
    const before = await headOf(station);
    expect(await runOf(station, request, agreed(preview))).toMatchObject({
      state: 'refused',
      code: 'import-questions-open',
    });
    expect(await headOf(station)).toEqual(before);
    const answers = { ...request, withoutUnknownPeople: true };
    const columns = agreed(preview).map((choice) => {
      if (choice.column === 3) return { ...choice, dates: 'mdy' as const };
      return choice.column === 4 ? { ...choice, unit: 'm' as const } : choice;
    });
    expect(await runOf(station, answers, columns)).toMatchObject({ state: 'imported', devices: 2 });
    const [ours, nobodys] = [await deviceWith(station, 'IMQ-0001'), await deviceWith(station, 'IMQ-0002')];
    expect(ours).toMatchObject({ dateOfManufacture: '2023-03-04', regularUser: 'Teo Arandal' });
    expect(nobodys).toMatchObject({ dateOfManufacture: '2023-05-04' });
    expect(nobodys.regularUser).toBeUndefined();
  });
});

describe('an import', () => {
  test('registers devices that were never inspected here, with the list as what is declared of them', async () => {
    const station = await demoStation();
    const request = fileOf(fleet);
    const sha256 = createHash('sha256').update(fleet).digest('hex');
    expect(await runOf(station, request)).toMatchObject({
      state: 'imported',
      devices: 3,
      modelSheets: 1,
      inspections: 2,
      removed: 1,
      sha256,
    });
    const passed = await deviceWith(station, 'T12-2021-0007');
    expect(passed).toMatchObject({
      standing: 'new',
      dueState: 'never inspected',
      inspections: [],
      declaredInspections: [
        {
          inspectedOn: '2025-04-30',
          inspectedBy: 'A. Fenwick',
          result: 'passed',
          source: { fileName: 'fleet.csv', sha256, row: 2 },
        },
      ],
    });
    expect(passed.currentTag).toBeUndefined();
    expect(passed.marking).toHaveLength(9);
    expect(passed.marking.map(({ state }) => state)).toEqual(Array(9).fill('not read'));
    expect((await deviceWith(station, 'N6-23-4401')).declaredInspections).toEqual([]);
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
    await station.expectOutput('session.sign-in', { badge: demo.administrator });
    await station.expectOutput('ledger.rebuild', {});
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('keeps a device that the list calls removed out of service, with its note', async () => {
    const station = await demoStation();
    await runOf(station, fileOf(fleet));
    const removed = await deviceWith(station, 'T12-2021-0008');
    expect(removed.standing).toBe('quarantined');
    expect(removed.reasons.map(({ sentence }) => sentence.en)).toEqual([
      'Declared removed from service before it was imported. Hook corroded.',
    ]);
    expect(removed.currentTag).toMatchObject({ kind: 'quarantine', tagNumber: 1 });
  });

  test('takes nothing at all where one row is at fault', async () => {
    const station = await demoStation();
    const before = await headOf(station);
    const list = `${fleet}Norvane,Lode 6,N6-23-4401,2023-02,6 m,galvanized,,,,,,,,,\n`;
    expect(await runOf(station, fileOf(list))).toMatchObject({ state: 'refused', code: 'import-has-faults' });
    expect(await headOf(station)).toEqual(before);
  });

  test('of the same list a second time is refused row by row', async () => {
    const station = await demoStation();
    await runOf(station, fileOf(fleet));
    const again = await previewOf(station, fileOf(fleet));
    expect(again.faults.map(({ code }) => code)).toEqual(['serial-taken', 'serial-taken', 'serial-taken']);
  });

  test('that is canceled before it is committed leaves nothing', async () => {
    const station = await demoStation();
    const rows = Array.from({ length: 900 }, (_, index) => `Norvane,Lode 6,BULK-${index},2023-02,6 m`);
    const request = fileOf(`Maker,Model,Serial,Made,Length\n${rows.join('\n')}`);
    const before = await headOf(station);
    const columns = agreed(await previewOf(station, request));
    const { job } = await station.expectOutput('import.run', { ...request, columns });
    for (;;) {
      const status = await station.expectOutput('import.status', { job });
      if (status.state !== 'working' || status.done > 0) break;
    }
    await station.expectOutput('import.cancel', { job });
    expect(await endOf(station, job)).toMatchObject({ state: 'refused', code: 'import-canceled' });
    expect(await headOf(station)).toEqual(before);
    const after = await runOf(station, request, columns);
    expect(after).toMatchObject({ state: 'imported', devices: 900 });
  });

  test('proposes no meaning by itself, and is not for everybody', async () => {
    const station = await demoStation();
    const { code } = await station.expectError('import.run', fileOf(fleet) as never);
    expect(code).toBe('input-invalid');
    await station.expectOutput('session.sign-in', { badge: demo.attendant });
    expect((await station.expectError('import.preview', fileOf(fleet))).code).toBe('role-needed');
  });

  test('refuses a mapping in which the needed meanings are not there', async () => {
    const station = await demoStation();
    const end = await runOf(station, fileOf(fleet), [{ column: 0, meaning: 'manufacturer' }]);
    expect(end).toMatchObject({ state: 'refused', code: 'import-meaning-needed' });
  });
});

test('an inspected device that was imported can pass only when every element was answered', async () => {
  const station = await demoStation();
  await runOf(station, fileOf(`${headings.split(',').slice(0, 3).join(',')}\nNorvane,Lode 6,N6-77`));
  const { benchId } = await deviceWith(station, 'N6-77');
  const { inspection } = await station.expectOutput('inspection.start', { benchId });
  const { verdict } = inspection;
  expect(verdict.kind).toBe('incomplete');
  expect(verdict.kind === 'incomplete' && verdict.unanswered).toContain('marking.serialNumber');
});
