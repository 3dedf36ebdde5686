/** The type of use that a list says of its devices. */
import { expect, test } from 'vitest';
import { demo, demoStation } from '../../support/station-fixture.ts';
import { fileOf, previewOf, runOf } from './import-support.ts';

const list = `Maker;Model;Serial;Made;Length;Type of use
Norvane;Lode 6;NEW-1;2026-01;6 m;severe
Norvane;Lode 6;NEW-2;2026-01;6 m;Moderado a intenso
Norvane;Lode 6;NEW-3;2026-01;6 m;`;

test('counts where a competent person takes the list in, from that day on', async () => {
  const station = await demoStation();
  expect(await runOf(station, fileOf(list))).toMatchObject({ state: 'imported' });
  const { devices } = await station.expectOutput('device.list', { search: 'NEW-' });
  expect(devices.map(({ serial, typeOfUse }) => [serial, typeOfUse])).toEqual([
    ['NEW-1', 'severe to continuous'],
    ['NEW-2', 'moderate to heavy'],
    ['NEW-3', undefined],
  ]);
  const { device } = await station.expectOutput('device.show', { benchId: devices[0]!.benchId });
  expect(device.uses).toMatchObject([{ from: '2026-03-10', by: 'Teo Arandal' }]);
});

test('of anybody else is a fault of its row in the preview, and nothing of the list goes in', async () => {
  const station = await demoStation();
  await station.expectOutput('session.sign-in', { badge: demo.administrator });
  const { faults } = await previewOf(station, fileOf(list));
  expect(faults.map(({ row, heading }) => [row, heading])).toEqual([
    [2, 'Type of use'],
    [3, 'Type of use'],
  ]);
  expect(faults[0]!.sentence).toContain('only a competent person for that model determines');
  expect(await runOf(station, fileOf(list))).toMatchObject({ code: 'import-has-faults' });
  expect((await station.expectOutput('device.list', { search: 'NEW-' })).total).toBe(0);
});

test('that is none of the three is a fault of its row', async () => {
  const station = await demoStation();
  const { faults } = await previewOf(station, fileOf(list.replace('severe', 'sometimes')));
  expect(faults.map(({ row, heading }) => [row, heading])).toEqual([[2, 'Type of use']]);
});
