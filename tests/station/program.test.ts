/** The employer's program at the station: who may adopt it, what it changes, and what it refuses. */
import { describe, expect, test } from 'vitest';
import { benchIdSchema } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import type { InputOf } from '../../src/station/contract.ts';
import { demo, demoStation, type TestStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { stationWithDevice } from './sample-device.ts';

const benchId = benchIdSchema.parse('PD98WXGY0D');

type Settings = InputOf<'program.adopt'>['program'];

const presetOf = async (
  { expectOutput }: Pick<TestStation, 'expectOutput'>,
  key: string,
): Promise<Settings> => {
  const { presets } = await expectOutput('program.show', {});
  const { version: _version, ...settings } = presets.find((each) => each.key === key)!;
  return settings;
};

const asAdministrator = async ({ expectOutput }: Pick<TestStation, 'expectOutput'>) =>
  expectOutput('session.sign-in', { badge: demo.administrator });

/** Adopts a preset with changes, as the administrator, and signs in as the inspector again. */
const adopt = async (
  station: Pick<TestStation, 'expectOutput'>,
  key: string,
  changed: Partial<Settings> = {},
) => {
  await asAdministrator(station);
  const settings = await presetOf(station, key);
  const program = { ...settings, key: 'north-quay', ...changed };
  const adopted = await station.expectOutput('program.adopt', { program, pin: demo.pin });
  await station.expectOutput('session.sign-in', { badge: demo.inspector });
  return adopted;
};

describe('adopting a program', () => {
  test('takes an administrator and their PIN', async () => {
    const station = await demoStation();
    const program = { ...(await presetOf(station, 'by-type-of-use')), key: 'north-quay' };
    for (const badge of [demo.user, demo.attendant, demo.inspector]) {
      await station.expectOutput('session.sign-in', { badge });
      expect((await station.expectError('program.adopt', { program, pin: demo.pin })).code).toBe(
        'role-needed',
      );
    }
    await asAdministrator(station);
    expect((await station.expectError('program.adopt', { program, pin: '000000' })).code).toBe('pin-wrong');
    const { adoption: before } = await station.expectOutput('program.show', {});
    await station.expectOutput('program.adopt', { program, pin: demo.pin });
    const { program: held, adoption } = await station.expectOutput('program.show', {});
    expect(before?.key).not.toBe('north-quay');
    expect(held.key).toBe('north-quay');
    expect(adoption).toMatchObject({
      on: '2026-03-10',
      byName: 'Ilse Marrowby',
      effectiveFrom: '2026-03-10',
    });
  });

  test('refuses one that is weaker than the trade with a sentence that says the limit, and records nothing', async () => {
    const station = await demoStation();
    await asAdministrator(station);
    const program = await presetOf(station, 'annual');
    const { head } = await station.expectOutput('ledger.verify', {});
    const refused = await station.expectError('program.adopt', {
      program: { ...program, inspectionInterval: { ...program.inspectionInterval, months: 18 } },
      pin: demo.pin,
    });
    expect(refused.code).toBe('program-inspection-too-rare');
    expect(refused.sentence).toContain('18');
    expect(refused.sentence).toContain('12');
    expect((await station.expectOutput('ledger.verify', {})).head).toEqual(head);
  });

  test('keeps the earlier ones, whole, and an inspection names the one that it used', async () => {
    const station = await stationWithDevice();
    const { expectOutput, benchId: newDevice } = station;
    const first = await adopt(station, 'annual');
    await adopt(station, 'annual', { dueSoonDays: 45 });
    const { program, earlier } = await expectOutput('program.show', {});
    expect(program).toMatchObject({
      key: 'north-quay',
      version: first.program.version + 1,
      dueSoonDays: 45,
    });
    const past = await expectOutput('program.version', { seq: earlier[0]!.seq });
    expect(past.program).toMatchObject({
      key: 'north-quay',
      version: first.program.version,
      dueSoonDays: 30,
    });
    const { inspection } = await walk(station, newDevice);
    await expectOutput('inspection.sign', { inspection, pin: demo.pin });
    expect((await station.expectError('program.version', { seq: 1 })).code).toBe('program-version-unknown');
    await station.close();
    const ledger = await openSqliteLedger(station.folder);
    if (isRefusal(ledger)) throw new Error(ledger.code);
    const signature = await ledger.read((reader) => reader.signatureOf(inspection));
    await ledger.close();
    expect(signature?.event).toMatchObject({ program: { key: program.key, version: program.version } });
  });

  test('brings due dates forward at once, and the overdue ones are counted', async () => {
    const station = await demoStation();
    const before = (await station.expectOutput('device.show', { benchId })).device;
    const { source } = (await presetOf(station, 'annual')).inspectionInterval;
    const { overdue } = await adopt(station, 'annual', { inspectionInterval: { months: 1, source } });
    const after = (await station.expectOutput('device.show', { benchId })).device;
    expect(after.dueOn! < before.dueOn!).toBe(true);
    expect(after.dueState).toBe('overdue');
    expect(after.due[0]).toMatchObject({ rule: 'employer', months: 1 });
    const listed = await station.expectOutput('device.list', { due: 'overdue', limit: 1 });
    expect(listed.total).toBe(overdue);
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('asks for more before a return, and a held device says what is missing and from how many persons', async () => {
    const station = await stationWithDevice();
    const { expectOutput, expectError, benchId: device } = station;
    await asAdministrator(station);
    const settings = await presetOf(station, 'annual');
    const weaker = { ...settings, release: [{ for: 'doubt', needs: [] }] };
    expect(await expectError('program.adopt', { program: weaker, pin: demo.pin })).toMatchObject({
      code: 'program-release-weaker',
      field: 'program.release.0',
    });
    const release = [{ for: 'doubt', needs: [['doubt-settled'], ['repair-certificate']], persons: 3 }];
    await adopt(station, 'annual');
    await expectOutput('device.remove', { benchId: device, ground: 'other', note: 'Looks odd.' });
    const missing = async () =>
      (await expectOutput('held.show', { benchId: device })).held.reasons[0]!.missing.map(
        ({ kinds, stillToAgree }) => [kinds.map(({ key }) => key).join(), stillToAgree],
      );
    expect(await missing()).toEqual([['doubt-settled,repair-certificate', undefined]]);
    await adopt(station, 'annual', { release });
    expect(await missing()).toEqual([
      ['doubt-settled', undefined],
      ['repair-certificate', undefined],
    ]);
    await expectOutput('held.record-evidence', {
      benchId: device,
      kind: 'doubt-settled',
      covers: [1],
      statement: 'Only paint.',
    });
    expect(await missing()).toEqual([
      ['doubt-settled', 2],
      ['repair-certificate', undefined],
    ]);
    expect((await expectError('release.take', { benchId: device, tag: '1' })).sentence).toContain(
      'Competent persons still to look at the device and agree to evidence',
    );
    const { program, earlier } = await expectOutput('program.show', {});
    expect(program.release).toEqual(release);
    const before = await expectOutput('program.version', { seq: earlier[0]!.seq });
    expect(before.program.release).toBeUndefined();
  });

  test('bounds how long a training counts', async () => {
    const station = await demoStation();
    await adopt(station, 'annual', { trainingValidityMonths: 12 });
    await asAdministrator(station);
    const designation = {
      designatedBy: 'Ilse Marrowby',
      designatedOn: '2026-03-01',
      trainedOn: '2026-02-10',
      trainingValidUntil: '2027-02-11',
    } as InputOf<'person.designate'>['designation'];
    const refused = await station.expectError('person.designate', { personId: 'P003', designation });
    expect(refused).toMatchObject({ code: 'training-longer-than-program', field: 'trainingValidUntil' });
    const within = { ...designation, trainingValidUntil: '2027-02-10' } as typeof designation;
    await station.expectOutput('person.designate', { personId: 'P003', designation: within });
  });
});

test('a program that bounds how long a training counts ends those that are longer, and says whose', async () => {
  const station = await demoStation();
  await asAdministrator(station);
  const designation = {
    designatedBy: 'Ilse Marrowby',
    designatedOn: '2025-03-01',
    trainedOn: '2025-02-10',
    trainingValidUntil: '2028-02-10',
  } as InputOf<'person.designate'>['designation'];
  await station.expectOutput('person.designate', { personId: 'P003', designation });
  const ends = async () => {
    const { people } = await station.expectOutput('person.list', {});
    return new Map(people.map((person) => [person.personId, person.designation?.trainingValidUntil]));
  };
  const before = await ends();
  // Nobody's training of the invented depot counts for ten years.
  expect((await adopt(station, 'annual', { trainingValidityMonths: 120 })).boundTrainings).toBe(0);
  expect(await ends()).toEqual(before);
  const { boundTrainings } = await adopt(station, 'annual', { trainingValidityMonths: 12 });
  const after = await ends();
  const changed = [...after].filter(([personId, end]) => end !== before.get(personId));
  expect(changed).toHaveLength(boundTrainings);
  for (const [personId, end] of changed) expect(end! < before.get(personId)!, personId).toBe(true);
  // Trained on 10 February 2025 and a year: it had ended by 10 March 2026, when the program was adopted.
  expect(after.get('P003')).toBe('2026-02-10');
  const { training } = await station.expectOutput('schedule.notices', {});
  expect(training).toContainEqual(
    expect.objectContaining({ personId: 'P003', notice: 'expired', on: '2026-02-10' }),
  );
  expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
});

describe('the type of use of a device', () => {
  test('is determined by a competent person alone, for several devices or for none', async () => {
    const station = await stationWithDevice();
    const wanted = { benchIds: [benchId, station.benchId], typeOfUse: 'severe to continuous' as const };
    await station.expectOutput('session.sign-in', { badge: demo.attendant });
    expect((await station.expectError('device.set-use', wanted)).code).toBe('signer-not-designated');
    await station.expectOutput('session.sign-in', { badge: demo.expiredInspector });
    expect((await station.expectError('device.set-use', wanted)).code).toBe('signer-training-expired');
    await station.expectOutput('session.sign-in', { badge: demo.inspector });
    const unknown = benchIdSchema.parse('0000000000');
    const withUnknown = { ...wanted, benchIds: [station.benchId, unknown] };
    expect((await station.expectError('device.set-use', withUnknown)).code).toBe('device-unknown');
    expect((await station.card()).typeOfUse).toBeUndefined();
    expect(await station.expectOutput('device.set-use', wanted)).toEqual({ changed: 2 });
    expect(await station.expectOutput('device.set-use', wanted)).toEqual({ changed: 0 });
    expect((await station.card()).uses).toMatchObject([
      { typeOfUse: 'severe to continuous', from: '2026-03-10', by: 'Teo Arandal' },
    ]);
  });

  test('holds from today or an earlier day, not before the device was made', async () => {
    const station = await stationWithDevice();
    const set = (from: string) =>
      ({ benchIds: [station.benchId], typeOfUse: 'moderate to heavy', from }) as InputOf<'device.set-use'>;
    expect((await station.expectError('device.set-use', set('2026-03-11'))).code).toBe('fact-to-come');
    expect((await station.expectError('device.set-use', set('2025-12-31'))).code).toBe('fact-before-made');
    await station.expectOutput('device.set-use', set('2026-02-01'));
  });

  test('decides on the date of the next inspection that is signed, and the card names the rule and the others', async () => {
    const station = await stationWithDevice();
    const { expectOutput, benchId: newDevice } = station;
    await expectOutput('device.set-use', { benchIds: [newDevice], typeOfUse: 'severe to continuous' });
    const { inspection } = await walk(station, newDevice);
    const { inspection: signed } = await expectOutput('inspection.sign', { inspection, pin: demo.pin });
    expect(signed.signed?.dueOn).toBe('2026-06-10');
    const card = await station.card();
    expect(card).toMatchObject({ dueOn: '2026-06-10', dueWhat: 'documented inspection' });
    expect(card.due[0]).toMatchObject({ rule: 'standard', months: 3, countedFrom: '2026-03-10' });
    expect(card.dueByEveryRule.map(({ rule }) => rule)).toContain('employer');
  });
});

test('a later first use of a device that was inspected is not for the attendant to record', async () => {
  const station = await stationWithDevice();
  const { inspection } = await walk(station, station.benchId);
  await station.expectOutput('inspection.sign', { inspection, pin: demo.pin });
  const first = (firstUsedOn: string) => ({ benchId: station.benchId, firstUsedOn });
  await station.expectOutput('device.record-facts', first('2026-02'));
  await station.expectOutput('session.sign-in', { badge: demo.attendant });
  const refused = await station.expectError('device.record-facts', first('2026-03'));
  expect(refused).toMatchObject({ code: 'first-use-later-not-entitled', field: 'firstUsedOn' });
  await station.expectOutput('device.record-facts', first('2026-01'));
  await station.expectOutput('session.sign-in', { badge: demo.administrator });
  await station.expectOutput('device.record-facts', first('2026-03'));
});

describe('a revalidation that is overdue', () => {
  const overdue = async () => {
    const station = await stationWithDevice();
    await station.expectOutput('device.record-facts', { benchId: station.benchId, firstUsedOn: '2026-01' });
    const intervals = { modelSheetId: 'M004', manufacturerRevalidationMonths: 1 };
    await station.expectOutput('model-sheet.set-intervals', intervals);
    return station;
  };

  test('is said before the walk begins, and the device does not pass, whatever is found', async () => {
    const station = await overdue();
    expect((await station.card()).programReasons).toMatchObject([{ key: 'program.revalidation-overdue' }]);
    const inspection = await walk(station, station.benchId);
    expect(inspection.verdict).toMatchObject({
      kind: 'remove from service',
      reasons: [{ key: 'program.revalidation-overdue', effect: 'refer-to-manufacturer' }],
    });
    const { inspection: signed } = await station.expectOutput('inspection.sign', {
      inspection: inspection.inspection,
      pin: demo.pin,
    });
    expect(signed.verdict.kind).toBe('remove from service');
    expect(await station.card()).toMatchObject({ standing: 'quarantined', due: [] });
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('is settled by the certificate that a competent person records', async () => {
    const station = await overdue();
    const certificate = {
      benchId: station.benchId,
      revalidatedOn: '2026-03-09',
      revalidatedBy: 'Quillmoor Fall Arrest',
      certificate: 'QF-2026-118',
    } as InputOf<'device.record-revalidation'>;
    await station.expectOutput('session.sign-in', { badge: demo.attendant });
    expect((await station.expectError('device.record-revalidation', certificate)).code).toBe(
      'signer-not-designated',
    );
    await station.expectOutput('session.sign-in', { badge: demo.inspector });
    const future = { ...certificate, revalidatedOn: '2026-03-11' } as typeof certificate;
    expect((await station.expectError('device.record-revalidation', future)).code).toBe('fact-to-come');
    expect(await station.expectOutput('device.record-revalidation', certificate)).toEqual({ changed: true });
    expect((await station.card()).programReasons).toEqual([]);
    const { inspection } = await walk(station, station.benchId);
    const { inspection: signed } = await station.expectOutput('inspection.sign', {
      inspection,
      pin: demo.pin,
    });
    expect(signed.signed?.dueOn).toBe('2026-04-09');
    expect((await station.card()).due[0]).toMatchObject({ what: 'revalidation', rule: 'manufacturer' });
    const { content } = await station.expectOutput('tag.preview', {
      benchId: station.benchId,
      kind: 'status',
    });
    expect(content).toMatchObject({ dueOn: '2026-04-09', dueFor: 'revalidation' });
  });
});

describe('an inspection that was missed', () => {
  test('is made good by another one, or calls for revalidation, as the program says', async () => {
    const station = await stationWithDevice();
    const { inspection } = await walk(station, station.benchId);
    await station.expectOutput('inspection.sign', { inspection, pin: demo.pin });
    station.clock.advance({ days: 300 });
    await adopt(station, 'annual', { missedInspection: { rule: 'revalidate', graceDays: 0 } });
    expect((await station.card()).programReasons).toEqual([]);
    station.clock.advance({ days: 66 });
    expect((await station.card()).programReasons).toMatchObject([{ key: 'program.inspection-missed' }]);
    await adopt(station, 'annual', { missedInspection: { rule: 'inspect', graceDays: 0 } });
    expect((await station.card()).programReasons).toEqual([]);
  });
});

test('what is due until a day is listed with its rule, the earliest first', async () => {
  const { expectOutput } = await demoStation();
  const until = '2026-12-31' as InputOf<'due.list'>['until'];
  const { devices, total } = await expectOutput('due.list', { until });
  expect(devices).toHaveLength(total);
  expect(total).toBeGreaterThan(10);
  const dates = devices.map(({ due }) => due[0]!.on);
  expect(dates).toEqual(dates.toSorted());
  for (const { device, due } of devices) expect(due[0]!.on).toBe(device.dueOn);
  for (const on of dates) expect(on <= until).toBe(true);
});
