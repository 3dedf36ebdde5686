/** People and designations through the contract: what is recorded, who may, and what follows at once. */
import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../src/domain/brand.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { sampleDevice } from './sample-device.ts';

const today = calendarDate('2026-03-10');
const narrowInspector = 'HP10079';
const leaver = 'HP10086';

/** Teo Arandal is P002; the window is the administrator's. */
const office = async () => {
  const station = await demoStation();
  await station.expectOutput('session.sign-in', { badge: demo.administrator });
  const show = (personId: string) => station.expectOutput('person.show', { personId });
  return { ...station, show };
};

describe('a lost badge', () => {
  test('never signs in again and says so, is given to nobody else, and opens no device', async () => {
    const { expectOutput, expectError, call } = await office();
    await expectOutput('person.change', { personId: 'P002', badge: 'HP20001', because: 'Lost on site' });
    await expectOutput('session.sign-in', { badge: 'HP20001' });
    const refused = await expectError('session.sign-in', { badge: demo.inspector });
    expect(refused).toMatchObject({ code: 'badge-replaced', field: 'badge' });
    expect(refused.sentence).toContain('Teo Arandal');
    expect(refused.sentence).not.toContain('HP20001');
    const scanned = await expectOutput('scan.interpret', { text: demo.inspector, typed: false });
    expect(scanned).toEqual({ meaning: 'badge', badge: demo.inspector, name: 'Teo Arandal' });
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const again = { name: 'Mara Quill', badge: demo.inspector, roles: ['user' as const] };
    expect(await expectError('person.add', again)).toMatchObject({ code: 'badge-taken' });
    const back = { personId: 'P002', badge: demo.inspector, because: 'Found again' };
    expect(await expectError('person.change', back)).toMatchObject({ code: 'badge-taken' });
    const device = await call('device.register', sampleDevice('Q26C49100', demo.inspector));
    expect(device.ok ? 'registered' : device.error.code).toBe('code-taken');
  });
});

describe('a person who leaves', () => {
  test('is signed out of every window at once, signs in no more, and is still in the record', async () => {
    const { expectOutput, expectError, callAs, show } = await office();
    const bench = callAs('bench');
    await bench('session.sign-in', { badge: demo.inspector });
    expect((await bench('device.list', {})).ok).toBe(true);
    await expectOutput('person.leave', { personId: 'P002', because: 'Moved away' });
    const stranded = await bench('device.list', {});
    expect(stranded.ok ? 'listed' : stranded.error.code).toBe('sign-in-needed');
    expect(await expectError('session.sign-in', { badge: demo.inspector })).toMatchObject({
      code: 'badge-of-leaver',
    });
    await expectOutput('session.sign-in', { badge: demo.administrator });
    await expectOutput('person.return', { personId: 'P002', because: 'Back for a day' });
    const back = await bench('device.list', {});
    expect(back.ok ? 'listed' : back.error.code).toBe('sign-in-needed');
    await expectOutput('person.leave', { personId: 'P002', because: 'Moved away' });
    const record = await show('P002');
    expect(record.person).toMatchObject({ maySign: false, left: { on: today, because: 'Moved away' } });
    expect(record.designations[0]).toMatchObject({
      designation: { document: 'HP-DES-07' },
      ended: { on: today, how: 'left', because: 'Moved away', by: 'Ilse Marrowby' },
    });
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('comes back by an event, signs in with the same badge, and signs only with a new designation', async () => {
    const { expectOutput, expectError, show } = await office();
    await expectOutput('person.leave', { personId: 'P002', because: 'Moved away' });
    await expectOutput('person.return', { personId: 'P002', because: 'Back at the depot' });
    await expectOutput('session.sign-in', { badge: demo.inspector });
    const { benchId } = await expectOutput('device.register', sampleDevice('Q26C49101'));
    const walked = await walk({ expectOutput }, benchId);
    const sign = { inspection: walked.inspection, pin: demo.pin };
    expect(await expectError('inspection.sign', sign)).toMatchObject({ code: 'signer-designation-ended' });
    await expectOutput('session.sign-in', { badge: demo.administrator });
    await expectOutput('person.designate', {
      personId: 'P002',
      designation: {
        designatedBy: 'Ilse Marrowby',
        designatedOn: today,
        trainingValidUntil: calendarDate('2027-03-10'),
        document: 'HP-DES-14',
      },
    });
    await expectOutput('session.sign-in', { badge: demo.inspector });
    expect((await expectOutput('inspection.sign', sign)).inspection.verdict.kind).toBe('pass');
    expect((await show('P002')).history.slice(0, 3).map(({ event }) => event.type)).toEqual([
      'person.designated',
      'person.returned',
      'person.left',
    ]);
  });

  test('is not the last administrator, who cannot give up the role either', async () => {
    const { expectError } = await office();
    const because = 'Retired';
    expect(await expectError('person.leave', { personId: 'P001', because })).toMatchObject({
      code: 'last-administrator',
    });
    expect(
      await expectError('person.change', { personId: 'P001', roles: ['attendant'], because }),
    ).toMatchObject({ code: 'last-administrator' });
  });
});

describe('the scope of a designation', () => {
  test('keeps a competent person from signing a type of device that it does not name, and lets the others be signed', async () => {
    const { expectOutput, expectError } = await demoStation();
    await expectOutput('session.sign-in', { badge: demo.attendant });
    const outside = await expectOutput('device.register', sampleDevice('Q26C49102'));
    const within = await expectOutput('device.register', {
      ...sampleDevice('N26-1102'),
      modelSheetId: 'M001',
    });
    await expectOutput('session.sign-in', { badge: narrowInspector });
    const walkedOutside = await walk({ expectOutput }, outside.benchId);
    const refused = await expectError('inspection.sign', {
      inspection: walkedOutside.inspection,
      pin: demo.pin,
    });
    expect(refused.code).toBe('signer-out-of-scope');
    expect(refused.sentence).toContain('not designated for this type of device');
    const walkedWithin = await walk({ expectOutput }, within.benchId);
    await expectOutput('inspection.sign', { inspection: walkedWithin.inspection, pin: demo.pin });
  });

  test('is asked for any person, day and device of the register', async () => {
    const { expectOutput } = await demoStation();
    const { benchId } = await expectOutput('device.register', sampleDevice('Q26C49103'));
    const ask = async (personId: string, on: string, device?: typeof benchId) =>
      (
        await expectOutput('person.competence', {
          personId,
          on: calendarDate(on),
          ...(device === undefined ? {} : { benchId: device }),
        })
      ).competence.ground;
    expect(await ask('P007', '2026-03-10')).toBe('designated');
    expect(await ask('P007', '2026-03-10', benchId)).toBe('out of scope');
    expect(await ask('P007', '2025-03-10')).toBe('not yet designated');
    expect(await ask('P008', '2025-01-10')).toBe('designated');
    expect(await ask('P008', '2026-03-10')).toBe('left');
    expect(await ask('P005', '2026-03-10')).toBe('not designated');
    expect(await ask('P004', '2026-03-10')).toBe('training expired');
  });
});

describe('a PIN', () => {
  test('that an administrator resets is recorded with who and why, and that a person changes as their own', async () => {
    const { expectOutput, expectError, show } = await office();
    expect(await expectError('person.set-pin', { personId: 'P002', pin: '602214' })).toMatchObject({
      code: 'pin-reset-reason-needed',
      field: 'because',
    });
    await expectOutput('person.set-pin', { personId: 'P002', pin: '602214', because: 'Forgotten' });
    expect((await show('P002')).history[0]).toMatchObject({
      by: 'Ilse Marrowby',
      byThemselves: false,
      event: { type: 'person.pin-set', because: 'Forgotten' },
    });
    await expectOutput('session.sign-in', { badge: demo.inspector });
    expect(await expectError('person.change-own-pin', { pin: demo.pin, newPin: '299792' })).toMatchObject({
      code: 'pin-wrong',
    });
    expect(await expectError('person.change-own-pin', { pin: '602214', newPin: '111111' })).toMatchObject({
      code: 'pin-too-weak',
      field: 'newPin',
    });
    await expectOutput('person.change-own-pin', { pin: '602214', newPin: '299792' });
    expect((await show('P002')).history[0]).toMatchObject({ by: 'Teo Arandal', byThemselves: true });
    expect(await expectError('person.change-own-pin', { pin: '602214', newPin: '314159' })).toMatchObject({
      code: 'pin-wrong',
    });
  });
});

describe('who may', () => {
  test('change people is the administrator alone; anybody may read who was competent', async () => {
    const { expectOutput, expectError } = await demoStation();
    const because = 'Because';
    for (const badge of [demo.user, demo.attendant, demo.inspector]) {
      await expectOutput('session.sign-in', { badge });
      const refused = { code: 'role-needed' };
      expect(await expectError('person.change', { personId: 'P006', name: 'X', because })).toMatchObject(
        refused,
      );
      expect(await expectError('person.leave', { personId: 'P006', because })).toMatchObject(refused);
      expect(await expectError('person.return', { personId: 'P008', because })).toMatchObject(refused);
      expect(await expectError('person.end-designation', { personId: 'P002', because })).toMatchObject(
        refused,
      );
      expect((await expectOutput('person.show', { personId: 'P002' })).person.name).toBe('Teo Arandal');
    }
  });

  test('training that ends is told to the administrator, and to nobody else', async () => {
    const { expectOutput } = await office();
    const status = await expectOutput('station.status', {});
    expect(status.state === 'ready' && status.trainingNotices).toMatchObject([
      { name: 'Odile Farrant', notice: 'expired' },
      { name: 'Sunniva Calloway', notice: 'ends soon' },
    ]);
    await expectOutput('session.sign-in', { badge: demo.inspector });
    expect(await expectOutput('station.status', {})).not.toHaveProperty('trainingNotices');
  });

  test('sign in is not who had left before the program was opened', async () => {
    const { expectError } = await demoStation();
    expect(await expectError('session.sign-in', { badge: leaver })).toMatchObject({
      code: 'badge-of-leaver',
    });
  });
});
