/** Corrections through the contract: both stay visible, and no verdict or standing follows from one. */
import { describe, expect, test } from 'vitest';
import type { WantedCorrection } from '../../src/domain/amendment.ts';
import { demo, type TestStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { stationWithDevice } from './sample-device.ts';

type Correction = Parameters<TestStation['expectOutput']>[1];

/** A device of the 50 ft model, passed by Teo Arandal, and what can be corrected of it. */
const passedDevice = async () => {
  const station = await stationWithDevice('Q26C49200');
  const walked = await walk(station, station.benchId);
  await station.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
  const amendable = await station.expectOutput('record.amendable', { benchId: station.benchId });
  const registration = amendable.device!.find(({ field }) => field === 'serial')!.amends;
  const answer = (check: string) =>
    amendable.inspections![0]!.answers.find((each) => each.check === check)!.amends;
  const input = (amends: number, correction: WantedCorrection, more: object = {}) =>
    ({ amends, correction, because: 'Misread', pin: demo.pin, ...more }) satisfies Correction;
  return { ...station, inspection: walked.inspection, registration, answer, input };
};

describe('a correction of a device', () => {
  test('shows what is said now, what was said, by whom and why, and leaves the first entry as it is', async () => {
    const { expectOutput, benchId, registration, input, card } = await passedDevice();
    const correction = { field: 'dateOfManufacture', now: '2025-11' } as const;
    const { seq } = await expectOutput(
      'record.amend',
      input(registration, correction, { markingReadNow: true }),
    );
    const device = await card();
    expect(device.dateOfManufacture).toBe('2025-11');
    expect(device.amendments).toEqual([
      {
        seq,
        amends: registration,
        on: '2026-03-10',
        by: 'Teo Arandal',
        because: 'Misread',
        correction: { field: 'dateOfManufacture', was: '2026-01', now: '2025-11' },
      },
    ]);
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
    expect(await expectOutput('device.show', { benchId })).toMatchObject({
      device: { standing: 'in service' },
    });
  });

  test('of what identifies it in service takes a reading of its marking now; a serial number then finds it, and its tag is to be renewed', async () => {
    const { expectOutput, expectError, benchId, registration, input, card } = await passedDevice();
    const corrected = { field: 'dateOfManufacture', now: '2025-11' } as const;
    expect(await expectError('record.amend', input(registration, corrected))).toMatchObject({
      code: 'amend-reading-needed',
      field: 'markingReadNow',
    });
    const wrong = input(registration, { field: 'serial', now: 'Q26C49299' }, { markingReadNow: true });
    expect(await expectError('record.amend', { ...wrong, pin: '999111' })).toMatchObject({
      code: 'pin-wrong',
    });
    await expectOutput('record.amend', wrong);
    const device = await card();
    expect(device).toMatchObject({ serial: 'Q26C49299', standing: 'in service' });
    expect(device.currentTag).not.toHaveProperty('provedOn');
    const scanned = await expectOutput('scan.interpret', { text: 'Q26C49299', typed: true });
    expect(JSON.stringify(scanned)).toContain(benchId);
    const twin = input(registration, { field: 'serial', now: 'Q26C49299' }, { markingReadNow: true });
    expect(await expectError('record.amend', twin)).toMatchObject({ code: 'amend-nothing-changed' });
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
    await expectOutput('session.sign-in', { badge: demo.administrator });
    await expectOutput('ledger.rebuild', {});
    expect(await card()).toEqual(device);
  });

  test('into another model is refused while an inspection stands that does not hold for it', async () => {
    const { expectOutput, expectError, benchId, registration, input, card } = await passedDevice();
    const other = input(registration, { field: 'modelSheet', now: 'M001' }, { markingReadNow: true });
    expect(await expectError('record.amend', other)).toMatchObject({
      code: 'amend-inspection-does-not-hold',
    });
    await expectOutput('device.remove', { benchId, ground: 'fall' });
    await expectOutput('record.amend', input(registration, { field: 'modelSheet', now: 'M001' }));
    expect(await card()).toMatchObject({ manufacturer: 'Norvane', standing: 'quarantined' });
    expect((await card()).amendments[0]?.correction).toEqual({
      field: 'modelSheet',
      was: 'Quillmoor Stayline 50 ft',
      now: 'Norvane Lode 2',
    });
  });

  test('never makes its inspector its regular user while it is in service on that signature', async () => {
    const { expectOutput, expectError, registration, input, card } = await passedDevice();
    const signer = input(registration, { field: 'regularUser', now: 'P002' });
    expect(await expectError('record.amend', signer)).toMatchObject({ code: 'amend-user-signed' });
    await expectOutput('record.amend', input(registration, { field: 'regularUser', now: 'P006' }));
    expect((await card()).regularUser).toBe('Nadia Solheim');
    await expectOutput('record.amend', input(registration, { field: 'regularUser' }));
    expect(await card()).not.toHaveProperty('regularUser');
  });

  test('is made by an administrator or a competent person, and names an entry that says it', async () => {
    const { expectOutput, expectError, registration, answer, input } = await passedDevice();
    const serial = { field: 'serial', now: 'Q26C49298' } as const;
    const wrongEntry = input(answer('housing.body'), serial, { markingReadNow: true });
    expect(await expectError('record.amend', wrongEntry)).toMatchObject({ code: 'amend-not-there' });
    expect(await expectError('record.amend', input(9_999_999, serial))).toMatchObject({
      code: 'amend-not-there',
    });
    for (const badge of [demo.attendant, demo.user, demo.expiredInspector]) {
      await expectOutput('session.sign-in', { badge });
      const refused = await expectError(
        'record.amend',
        input(registration, serial, { markingReadNow: true }),
      );
      expect(refused.code).toBe('amend-not-entitled');
    }
    await expectOutput('session.sign-in', { badge: demo.administrator });
    await expectOutput('record.amend', input(registration, serial, { markingReadNow: true }));
  });
});

describe('a correction of a signed answer', () => {
  test('never changes the verdict; an answer that would remove the device is corrected only once it is out of service', async () => {
    const { expectOutput, expectError, benchId, inspection, answer, input, card } = await passedDevice();
    const missing = { field: 'answer', now: { kind: 'marking', state: 'missing' } } as const;
    const wanted = input(answer('marking.warnings'), missing);
    expect(await expectError('record.amend', wanted)).toMatchObject({ code: 'amend-remove-first' });
    expect((await card()).amendments).toEqual([]);
    await expectOutput('device.remove', { benchId, ground: 'fall' });
    await expectOutput('record.amend', wanted);
    const shown = (await expectOutput('inspection.show', { inspection })).inspection;
    expect(shown.verdict.kind).toBe('pass');
    expect(shown.answers['marking.warnings']).toMatchObject({
      answer: { kind: 'marking', state: 'missing' },
      by: 'Teo Arandal',
    });
    expect(shown.amendments[0]?.correction).toMatchObject({
      was: { kind: 'marking', state: 'legible' },
      now: { kind: 'marking', state: 'missing' },
    });
    expect((await card()).standing).toBe('quarantined');
  });

  test('never turns a removal into a pass', async () => {
    const station = await stationWithDevice('Q26C49201');
    const { expectOutput, benchId, card } = station;
    const walked = await walk(station, benchId, {
      'marking.warnings': { kind: 'marking', state: 'missing' },
    });
    const { inspection } = walked;
    await expectOutput('inspection.sign', { inspection, pin: demo.pin });
    const { inspections } = await expectOutput('record.amendable', { benchId });
    const { amends } = inspections![0]!.answers.find(({ check }) => check === 'marking.warnings')!;
    await expectOutput('record.amend', {
      amends,
      correction: { field: 'answer', now: { kind: 'marking', state: 'legible' } },
      because: 'Wrong key',
      pin: demo.pin,
    });
    expect((await card()).standing).toBe('quarantined');
    expect((await card()).reasons).toHaveLength(1);
    expect((await expectOutput('inspection.show', { inspection })).inspection.verdict.kind).toBe(
      'remove from service',
    );
  });

  test('is made by who signed it or by another competent person for this type of device, and fits the check', async () => {
    const { expectOutput, expectError, answer, input } = await passedDevice();
    const longer = { field: 'answer', now: { kind: 'length', confirmedM: 15.3 as never } } as const;
    const wanted = input(answer('payout.full-length'), longer);
    for (const badge of [demo.administrator, demo.attendant, 'HP10079']) {
      await expectOutput('session.sign-in', { badge });
      expect(await expectError('record.amend', wanted)).toMatchObject({ code: 'amend-answer-not-entitled' });
    }
    await expectOutput('session.sign-in', { badge: demo.regularUser });
    const nonsense = input(answer('payout.full-length'), { field: 'answer', now: { kind: 'good' } });
    expect(await expectError('record.amend', nonsense)).toMatchObject({ code: 'answer-not-allowed' });
    await expectOutput('record.amend', wanted);
  });

  test('is for a signed inspection: while it is open, the check is answered again', async () => {
    const station = await stationWithDevice('Q26C49202');
    const { expectOutput, expectError, benchId } = station;
    const walked = await walk(station, benchId);
    expect((await expectOutput('record.amendable', { benchId })).inspections).toEqual([]);
    const { size } = (await expectOutput('ledger.verify', {})).head;
    const refused = await expectError('record.amend', {
      amends: size,
      correction: { field: 'answer', now: { kind: 'good' } },
      because: 'Wrong key',
      pin: demo.pin,
    });
    expect(refused.code).toBe('amend-not-signed');
    expect(walked.state).toBe('open');
  });
});

test('a name that was entered wrongly is corrected by an administrator, and both are shown', async () => {
  const { expectOutput, expectError } = await stationWithDevice('Q26C49203');
  const { name } = await expectOutput('record.amendable', { personId: 'P006' });
  const input = {
    amends: name!.amends,
    correction: { field: 'name', now: 'Nadja Solheim' } as const,
    because: 'Misspelt',
    pin: demo.pin,
  };
  expect(await expectError('record.amend', input)).toMatchObject({ code: 'role-needed' });
  await expectOutput('session.sign-in', { badge: demo.administrator });
  await expectOutput('record.amend', input);
  const { person, amendments } = await expectOutput('person.show', { personId: 'P006' });
  expect(person.name).toBe('Nadja Solheim');
  expect(amendments).toMatchObject([
    { by: 'Ilse Marrowby', because: 'Misspelt', correction: { was: 'Nadia Solheim', now: 'Nadja Solheim' } },
  ]);
});
