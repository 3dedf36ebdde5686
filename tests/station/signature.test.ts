/** Who may sign an inspection, and with which PIN. */
import { describe, expect, test } from 'vitest';
import { demo, demoStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { sampleDevice, stationWithDevice } from './sample-device.ts';

describe('the signature', () => {
  test('is refused while checks are open, and names how many and the first', async () => {
    const { expectOutput, expectError, benchId } = await stationWithDevice();
    const { inspection } = await expectOutput('inspection.start', { benchId });
    await expectOutput('inspection.answer', {
      inspection: inspection.inspection,
      check: 'marking.manufacturer',
      answer: { kind: 'marking', state: 'legible' },
    });
    const error = await expectError('inspection.sign', {
      inspection: inspection.inspection,
      pin: demo.pin,
    });
    expect(error.code).toBe('inspection-incomplete');
    expect(error.sentence).toContain(
      `${inspection.checks.length - 1} checks are still open, the first is marking.model`,
    );
  });

  test('is refused to a person whose training has run out, who may walk all the same', async () => {
    const { expectOutput, expectError, benchId, card } = await stationWithDevice();
    await expectOutput('session.sign-in', { badge: demo.expiredInspector });
    const walked = await walk({ expectOutput }, benchId);
    expect(
      await expectError('inspection.sign', {
        inspection: walked.inspection,
        pin: demo.pin,
      }),
    ).toMatchObject({ code: 'signer-training-expired' });
    expect((await card()).standing).toBe('new');
  });

  test('is refused to a person without a designation', async () => {
    const { expectOutput, expectError, benchId } = await stationWithDevice();
    await expectOutput('session.sign-in', { badge: demo.attendant });
    const walked = await walk({ expectOutput }, benchId);
    expect(
      await expectError('inspection.sign', {
        inspection: walked.inspection,
        pin: demo.pin,
      }),
    ).toMatchObject({ code: 'signer-not-designated' });
  });

  /** ANSI/ASSP Z359.2 and Z359.14 practice, from memory: the competent person is someone other than the regular user. */
  test('is refused to the regular user of the device', async () => {
    const station = await demoStation();
    const { benchId } = await station.expectOutput('device.register', {
      ...sampleDevice('Q26C49002'),
      regularUserId: 'P003',
    });
    await station.expectOutput('session.sign-in', { badge: demo.regularUser });
    const walked = await walk(station, benchId);
    expect(
      await station.expectError('inspection.sign', {
        inspection: walked.inspection,
        pin: demo.pin,
      }),
    ).toMatchObject({ code: 'signer-is-regular-user' });
  });

  test('is refused while any answer was given by somebody else', async () => {
    const { expectOutput, expectError, benchId } = await stationWithDevice();
    await expectOutput('session.sign-in', { badge: demo.attendant });
    const walked = await walk({ expectOutput }, benchId);
    await expectOutput('session.sign-in', { badge: demo.inspector });
    await expectOutput('inspection.answer', {
      inspection: walked.inspection,
      check: 'housing.body',
      answer: { kind: 'good' },
    });
    const error = await expectError('inspection.sign', {
      inspection: walked.inspection,
      pin: demo.pin,
    });
    expect(error).toMatchObject({ code: 'answers-by-others' });
    expect(error.sentence).toContain(`${walked.checks.length - 1} answers`);
  });

  test('is given once: a second one is refused', async () => {
    const { expectOutput, expectError, benchId } = await stationWithDevice();
    const walked = await walk({ expectOutput }, benchId);
    await expectOutput('inspection.sign', {
      inspection: walked.inspection,
      pin: demo.pin,
    });
    expect(
      await expectError('inspection.sign', {
        inspection: walked.inspection,
        pin: demo.pin,
      }),
    ).toMatchObject({ code: 'inspection-not-open' });
    expect(
      await expectError('inspection.answer', {
        inspection: walked.inspection,
        check: 'housing.body',
        answer: { kind: 'good' },
      }),
    ).toMatchObject({ code: 'inspection-not-open' });
  });
});

describe('the PIN', () => {
  test('locks for a minute after five wrong ones, also for the right one and across a restart', async () => {
    const first = await stationWithDevice();
    const walked = await walk(first, first.benchId);
    const input = { inspection: walked.inspection, pin: '999111' };
    for (const left of [4, 3, 2, 1]) {
      expect((await first.expectError('inspection.sign', input)).sentence).toContain(`Tries left: ${left}`);
    }
    expect(await first.expectError('inspection.sign', input)).toMatchObject({
      code: 'pin-locked',
      field: 'pin',
    });
    const again = await first.reopen();
    await again.expectOutput('session.sign-in', { badge: demo.inspector });
    expect((await again.expectError('inspection.sign', { ...input, pin: demo.pin })).sentence).toContain(
      'Wait 60 seconds',
    );
    again.clock.advance({ seconds: 59 });
    expect((await again.expectError('inspection.sign', { ...input, pin: demo.pin })).sentence).toContain(
      'Wait 1 seconds',
    );
    again.clock.advance({ seconds: 1 });
    expect((await again.expectOutput('inspection.sign', { ...input, pin: demo.pin })).inspection.state).toBe(
      'signed',
    );
  });

  test('is counted one try after another when several come at once', async () => {
    const { expectOutput, call, benchId } = await stationWithDevice();
    const walked = await walk({ expectOutput }, benchId);
    const tries = await Promise.all(
      Array.from({ length: 8 }, () =>
        call('inspection.sign', {
          inspection: walked.inspection,
          pin: '999111',
        }),
      ),
    );
    const codes = tries.map((result) => (result.ok ? 'signed' : result.error.code));
    expect(codes).toEqual([
      'pin-wrong',
      'pin-wrong',
      'pin-wrong',
      'pin-wrong',
      'pin-locked',
      'pin-locked',
      'pin-locked',
      'pin-locked',
    ]);
  });

  test('must be hard to guess', async () => {
    const { expectOutput, expectError } = await stationWithDevice();
    await expectOutput('session.sign-in', { badge: demo.administrator });
    for (const pin of ['12345', '111111', '123456', '987654', 'abcdef', '1234567890123']) {
      expect(await expectError('person.set-pin', { personId: 'P002', pin })).toMatchObject({
        code: 'pin-too-weak',
      });
    }
    await expectOutput('person.set-pin', { personId: 'P002', pin: '602214', because: 'Forgotten.' });
  });
});
