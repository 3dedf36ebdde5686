/** Wrong PINs: counted, slowed, recorded, and nobody locked out for good by a bystander. */
import { describe, expect, test } from 'vitest';
import { demo, demoStation, type TestStation } from '../support/station-fixture.ts';

const wrong = '999111';

const tryPin = async ({ call }: TestStation, pin: string): Promise<string> => {
  const result = await call('person.change-own-pin', { pin, newPin: '299792' });
  return result.ok ? 'taken' : result.error.sentence;
};

/** Tries wrong ones until there is a wait, and tells how long it is. */
const untilWait = async (station: TestStation): Promise<number> => {
  for (;;) {
    const seconds = /Wait (\d+) seconds/.exec(await tryPin(station, wrong))?.[1];
    if (seconds !== undefined) return Number(seconds);
  }
};

const refusedPins = async ({ callAs }: TestStation, personId: string) => {
  await callAs('office')('session.sign-in', { badge: demo.administrator });
  const shown = await callAs('office')('person.show', { personId });
  if (!shown.ok) throw new Error(shown.error.sentence);
  return shown.output.history
    .map(({ event }) => event)
    .filter((event) => event.type === 'person.pin-refused')
    .toReversed();
};

describe('wrong PINs in a row', () => {
  // Worked by hand: doubled from 60 s, at most an hour, as NIST SP 800-63B §5.2.2 suggests (from memory).
  const waits = [60, 120, 240, 480, 960, 1920, 3600, 3600];

  test('bring a wait after each fifth, a minute at first, doubled each time, an hour at most', async () => {
    const station = await demoStation();
    const seen: number[] = [];
    for (const wait of waits) {
      seen.push(await untilWait(station));
      station.clock.advance({ seconds: wait });
    }
    expect(seen).toEqual(waits);
    expect(await tryPin(station, demo.pin)).toBe('taken');
  });

  test('are counted anew after the right one', async () => {
    const station = await demoStation();
    await untilWait(station);
    station.clock.advance({ seconds: 60 });
    await untilWait(station);
    station.clock.advance({ seconds: 120 });
    expect(await tryPin(station, demo.pin)).toBe('taken');
    const again = await station.call('person.change-own-pin', { pin: wrong, newPin: '314159' });
    expect(again).toMatchObject({ error: { code: 'pin-wrong' } });
    expect(await refusedPins(station, 'P002')).toHaveLength(4);
  });

  test('end after a hundred, which an administrator ends by a new PIN', async () => {
    const station = await demoStation();
    const { callAs, clock } = station;
    let tries = 0;
    for (; tries < 100; tries += 1) {
      await tryPin(station, wrong);
      if (tries % 5 === 4) clock.advance({ seconds: 3600 });
    }
    clock.advance({ days: 30 });
    expect(
      await station.expectError('person.change-own-pin', { pin: demo.pin, newPin: '299792' }),
    ).toMatchObject({
      code: 'pin-closed',
    });
    await callAs('office')('session.sign-in', { badge: demo.administrator });
    const reset = { personId: 'P002', pin: '602214', because: 'Guessed at' };
    expect((await callAs('office')('person.set-pin', reset)).ok).toBe(true);
    expect(await tryPin(station, '602214')).toBe('taken');
  }, 120_000);

  test('never lock the only administrator out for good: one try a day is left', async () => {
    const station = await demoStation();
    const { expectOutput, expectError, clock } = station;
    await expectOutput('session.sign-in', { badge: demo.administrator });
    for (let tries = 0; tries < 100; tries += 1) {
      await tryPin(station, wrong);
      if (tries % 5 === 4) clock.advance({ seconds: 3600 });
    }
    expect(await expectError('person.change-own-pin', { pin: demo.pin, newPin: '299792' })).toMatchObject({
      code: 'pin-locked',
    });
    clock.advance({ seconds: 86_400 - 3600 });
    expect(await tryPin(station, demo.pin)).toBe('taken');
  }, 120_000);
});

describe('the record', () => {
  test('says who, when, how many and through what: the first in a row and each that brought a wait', async () => {
    const station = await demoStation();
    for (let tries = 0; tries < 200; tries += 1) await tryPin(station, wrong);
    station.clock.advance({ seconds: 60 });
    await untilWait(station);
    expect(await refusedPins(station, 'P002')).toEqual([
      { type: 'person.pin-refused', personId: 'P002', inARow: 1, from: 'window' },
      { type: 'person.pin-refused', personId: 'P002', inARow: 5, from: 'window', waitSeconds: 60 },
      { type: 'person.pin-refused', personId: 'P002', inARow: 10, from: 'window', waitSeconds: 120 },
    ]);
    expect(await station.expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
  }, 120_000);

  test('is shown to an administrator at the start for a week, or until the PIN is set anew', async () => {
    const station = await demoStation();
    const { expectOutput, clock } = station;
    await untilWait(station);
    expect(await expectOutput('station.status', {})).not.toHaveProperty('pinNotices');
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const told = [{ personId: 'P002', name: 'Teo Arandal', inARow: 5, on: '2026-03-10', isClosed: false }];
    expect(await expectOutput('station.status', {})).toMatchObject({ pinNotices: told });
    clock.advance({ days: 6 });
    expect(await expectOutput('station.status', {})).toMatchObject({ pinNotices: told });
    clock.advance({ days: 1 });
    expect(await expectOutput('station.status', {})).toMatchObject({ pinNotices: [] });
    clock.advance({ days: -7 });
    await expectOutput('person.set-pin', { personId: 'P002', pin: '602214', because: 'Guessed at' });
    expect(await expectOutput('station.status', {})).toMatchObject({ pinNotices: [] });
  });
});
