/** Purchase, first use and the manufacturer's contact, which the equipment record of EN 365:2004 §4.7 (from memory) asks for. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { benchIdSchema } from '../../src/domain/brand.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { fileOf, previewOf, runOf } from './exchange/import-support.ts';

const benchId = benchIdSchema.parse('GJQ81T5WX2');
/** The device of `demo-data/fleet.json` with that bench ID was made in 2018-08. */
const made = '2018-08';

describe('the purchase and the first use of a device', () => {
  test('are recorded as far as they are known, stay when one is not named, and are taken back by null', async () => {
    const { expectOutput } = await demoStation();
    expect((await expectOutput('device.show', { benchId })).device.dateOfManufacture).toBe(made);
    await expectOutput('device.record-facts', { benchId, purchasedOn: '2018-11', firstUsedOn: '2018-11-20' });
    await expectOutput('device.record-facts', { benchId, purchasedOn: '2018' });
    expect((await expectOutput('device.show', { benchId })).device).toMatchObject({
      purchasedOn: '2018',
      firstUsedOn: '2018-11-20',
    });
    expect(await expectOutput('device.record-facts', { benchId, purchasedOn: null })).toEqual({
      firstUsedOn: '2018-11-20',
    });
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('record nothing where they say what is known already', async () => {
    const { expectOutput } = await demoStation();
    await expectOutput('device.record-facts', { benchId, purchasedOn: '2018-11' });
    const { head } = await expectOutput('ledger.verify', {});
    await expectOutput('device.record-facts', { benchId, purchasedOn: '2018-11' });
    expect((await expectOutput('ledger.verify', {})).head).toEqual(head);
  });

  test('are refused where they are still to come, before the device was made, or the wrong way round', async () => {
    const { expectError } = await demoStation();
    const codeOf = async (facts: { purchasedOn?: string; firstUsedOn?: string }) => {
      const { code, field } = await expectError('device.record-facts', { benchId, ...facts });
      return [code, field];
    };
    expect(await codeOf({ purchasedOn: '2026-03-11' })).toEqual(['fact-to-come', 'purchasedOn']);
    expect(await codeOf({ firstUsedOn: '2017' })).toEqual(['fact-before-made', 'firstUsedOn']);
    expect(await codeOf({ purchasedOn: '2018-07-31' })).toEqual(['fact-before-made', 'purchasedOn']);
    expect(await codeOf({ purchasedOn: '2020-02', firstUsedOn: '2020-01-31' })).toEqual([
      'used-before-bought',
      'firstUsedOn',
    ]);
    for (const purchasedOn of ['2020-02-30', '20-02', 'yesterday', '2020-13'])
      expect(await codeOf({ purchasedOn })).toEqual(['input-invalid', 'purchasedOn']);
  });

  test('may be the very year, month or day of manufacture', async () => {
    const { expectOutput } = await demoStation();
    for (const date of ['2018', '2018-08', '2018-08-01'])
      await expectOutput('device.record-facts', { benchId, purchasedOn: date, firstUsedOn: date });
  });

  test('are not for a user to record', async () => {
    const { expectOutput, expectError } = await demoStation();
    await expectOutput('session.sign-in', { badge: demo.user });
    const refused = await expectError('device.record-facts', { benchId, purchasedOn: '2019' });
    expect(refused.code).toBe('role-needed');
  });

  test('come with a list, in the words of either language, and go out with the export', async () => {
    const station = await demoStation();
    const list = `Maker;Model;Serial;Made;Fecha de compra;First use;Length
Norvane;Lode 6;NEW-1;2023-02;2023-04;17/05/2023;6 m
Norvane;Lode 6;NEW-2;2023-02;2023;;6 m`;
    expect(await runOf(station, fileOf(list))).toMatchObject({ state: 'imported' });
    const { job } = await station.expectOutput('record.export', {});
    let status = await station.expectOutput('export.status', { job });
    while (status.state === 'working') {
      await new Promise((resolve) => setTimeout(resolve, 5));
      status = await station.expectOutput('export.status', { job });
    }
    if (status.state !== 'exported') throw new Error(JSON.stringify(status));
    const rows: Record<string, string>[] = parse(await readFile(join(status.folder, 'devices.csv')), {
      columns: true,
      bom: true,
    });
    const facts = rows
      .filter((row) => row['Serial number']?.startsWith('NEW-'))
      .map((row) => [row['Serial number'], row['Date of purchase'], row['First put into use']]);
    expect(facts).toEqual([
      ['NEW-1', '2023-04', '2023-05-17'],
      ['NEW-2', '2023', ''],
    ]);
  });

  test('of a list that cannot be are faults of its rows', async () => {
    const station = await demoStation();
    const list = `Maker;Model;Serial;Made;Purchased on;First use;Length
Norvane;Lode 6;NEW-1;2023-02;2023-01;;6 m
Norvane;Lode 6;NEW-2;2023-02;2024-01;2023-12;6 m`;
    const { faults } = await previewOf(station, fileOf(list));
    expect(faults.map(({ row, heading, code }) => [row, heading, code])).toEqual([
      [2, 'Purchased on', 'fact-before-made'],
      [3, 'First use', 'used-before-bought'],
    ]);
  });
});

describe("a manufacturer's contact", () => {
  test('stands on all of its model sheets and on no other', async () => {
    const { expectOutput, expectError } = await demoStation();
    const manufacturerContact = 'Norvane Returns, 1 Mole End, Harrow Quay';
    const sheetsBefore = (await expectOutput('model-sheet.list', {})).modelSheets;
    await expectOutput('model-sheet.set-contact', { manufacturer: 'norvane', manufacturerContact });
    const { modelSheets } = await expectOutput('model-sheet.list', {});
    expect(modelSheets).toEqual(
      sheetsBefore.map((sheet) =>
        sheet.manufacturer === 'Norvane' ? { ...sheet, manufacturerContact } : sheet,
      ),
    );
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
    const unknown = { manufacturer: 'Nobody', manufacturerContact };
    expect((await expectError('model-sheet.set-contact', unknown)).code).toBe('manufacturer-unknown');
  });
});
