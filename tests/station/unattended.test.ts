/** Windows that nobody touches, and a PC that goes to sleep: who is signed in stays known, and nothing is done for them. */
import { describe, expect, test } from 'vitest';
import { contract } from '../../src/station/contract.ts';
import type { Request } from '../../src/station/station.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';

/** The invented depot, the inspector signed in at `window`, and a clock of its own for what nobody does. */
const bench = async () => {
  let elapsedMs = 0;
  const station = await demoStation({ elapsedMs: () => elapsedMs });
  const ask = async (operation: string, from?: Request['from']): Promise<string> => {
    const request = { session: 'window', operation, input: {}, language: 'en' as const };
    const result = await station.station.call({ ...request, ...(from === undefined ? {} : { from }) });
    return result.ok ? 'answered' : result.error.code;
  };
  return {
    ...station,
    ask,
    pass: (by: { minutes?: number; seconds?: number }): void => {
      elapsedMs += ((by.minutes ?? 0) * 60 + (by.seconds ?? 0)) * 1000;
    },
  };
};

describe('a window that nobody touches', () => {
  test('is locked after five minutes, and not a second before', async () => {
    const { ask, pass } = await bench();
    pass({ minutes: 4, seconds: 59 });
    expect(await ask('person.list')).toBe('answered');
    pass({ seconds: 1 });
    expect(await ask('person.list')).toBe('session-locked');
  });

  test('is not kept open by what it asks by itself, only by what somebody does', async () => {
    const { ask, pass } = await bench();
    for (let minute = 0; minute < 6; minute += 1) {
      for (const operation of ['record.size', 'station.status', 'person.list', 'session.unattended'])
        await ask(operation);
      pass({ minutes: 1 });
    }
    expect(await ask('person.list')).toBe('session-locked');
  });

  test('stays open for as long as somebody is there', async () => {
    const { ask, pass } = await bench();
    for (let minute = 0; minute < 20; minute += 1) {
      pass({ minutes: 1 });
      await ask('session.attend');
    }
    expect(await ask('person.list')).toBe('answered');
  });

  test('is not opened again by a sign of somebody: it takes a badge', async () => {
    const { ask, pass } = await bench();
    pass({ minutes: 5 });
    await ask('session.attend');
    expect(await ask('person.list')).toBe('session-locked');
  });

  test('says whose it is by name and role, and who that is counts as signed in no more', async () => {
    const { expectOutput, pass } = await bench();
    expect(await expectOutput('station.status', {})).not.toHaveProperty('lockedFor');
    pass({ minutes: 5 });
    const status = await expectOutput('station.status', {});
    expect(status).toMatchObject({ lockedFor: { name: 'Teo Arandal', roles: ['inspector'] } });
    expect(status).not.toHaveProperty('person');
    expect(await expectOutput('record.size', {})).toMatchObject({ isLocked: true });
  });

  test('goes on with the same badge where it was, and with another one as that person', async () => {
    const { expectOutput, ask, pass } = await bench();
    const { inspection } = await expectOutput('inspection.start', { benchId: '9KAQSGGP0A' as never });
    pass({ minutes: 30 });
    expect(await ask('inspection.list')).toBe('session-locked');
    await expectOutput('session.sign-in', { badge: demo.inspector });
    const { inspection: same } = await expectOutput('inspection.show', { inspection: inspection.inspection });
    expect(same.state).toBe('open');
    pass({ minutes: 30 });
    await expectOutput('session.sign-in', { badge: demo.attendant });
    expect(await expectOutput('station.status', {})).toMatchObject({ person: { name: 'Bram Kestrin' } });
  });

  test('signs nothing because a badge was scanned: the PIN is asked as ever', async () => {
    const { expectOutput, expectError, pass } = await bench();
    const walked = await walk({ expectOutput }, '9KAQSGGP0A' as never);
    pass({ minutes: 5 });
    await expectOutput('session.sign-in', { badge: demo.inspector });
    const { inspection } = walked;
    expect((await expectError('inspection.sign', { inspection, pin: '' })).code).toBe('pin-wrong');
    expect((await expectError('inspection.sign', { inspection, pin: demo.inspector })).code).toBe(
      'pin-wrong',
    );
  });

  test('refuses every operation that takes somebody who is signed in, and answers the others', async () => {
    const { station, pass } = await bench();
    pass({ minutes: 5 });
    for (const { name, access } of contract.values()) {
      if (access === 'anyone') continue;
      const result = await station.call({ session: 'window', operation: name, input: {}, language: 'en' });
      expect.soft(result.ok ? 'done' : result.error.code, name).toBe('session-locked');
    }
  });

  test('of another session does not lock this one, and a terminal is never locked', async () => {
    const { callAs, ask, pass, expectOutput } = await bench();
    await callAs('desk')('session.sign-in', { badge: demo.attendant });
    pass({ minutes: 4 });
    await expectOutput('session.attend', {});
    pass({ minutes: 2 });
    expect(await callAs('desk')('person.list', {})).toMatchObject({ error: { code: 'session-locked' } });
    expect(await ask('person.list')).toBe('answered');
    pass({ minutes: 60 });
    expect(await ask('person.list', 'terminal')).toBe('answered');
  });

  test('is told by the station how long it still has', async () => {
    const { expectOutput, pass } = await bench();
    pass({ minutes: 4, seconds: 30 });
    expect(await expectOutput('session.unattended', {})).toEqual({ isLocked: false, secondsLeft: 30 });
    pass({ seconds: 30 });
    expect(await expectOutput('session.unattended', {})).toEqual({ isLocked: true, secondsLeft: 0 });
  });
});

describe('the time', () => {
  test('is set by an administrator alone, from one minute to half an hour, and holds at once', async () => {
    const { expectOutput, expectError, ask, pass } = await bench();
    expect((await expectError('station.set-unattended', { minutes: 10 })).code).toBe('role-needed');
    await expectOutput('session.sign-in', { badge: demo.administrator });
    for (const minutes of [0, 31, 2.5, -1])
      expect((await expectError('station.set-unattended', { minutes })).code).toBe('input-invalid');
    await expectOutput('station.set-unattended', { minutes: 1 });
    expect(await expectOutput('station.status', {})).toMatchObject({ unattendedMinutes: 1 });
    pass({ minutes: 1 });
    expect(await ask('person.list')).toBe('session-locked');
    expect(await expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
  });
});

test('a PC that goes to sleep locks every window at once, and nobody is signed out by it', async () => {
  const { station, callAs, ask, expectOutput } = await bench();
  await callAs('desk')('session.sign-in', { badge: demo.attendant });
  station.lockSessions();
  expect(await ask('person.list')).toBe('session-locked');
  expect(await callAs('desk')('person.list', {})).toMatchObject({ error: { code: 'session-locked' } });
  await expectOutput('session.sign-in', { badge: demo.inspector });
  expect(await ask('person.list')).toBe('answered');
});
