/** What is under way at a station: told while it goes, and waited for. */
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Begun, UnderWay } from '../../src/station/under-way.ts';
import { temporaryFolder, testStation } from '../support/station-fixture.ts';

const work = () => {
  let end: () => void = () => undefined;
  let fail: (error: Error) => void = () => undefined;
  const ended = new Promise<void>((resolve, reject) => {
    end = resolve;
    fail = reject;
  });
  return { ended, end, fail };
};

describe('what is under way', () => {
  test('is told by its kinds, each once, until the last of a kind has ended, however it ends', async () => {
    const told: (readonly Begun[])[] = [];
    const underWay = new UnderWay((kinds) => told.push(kinds));
    const [first, second, print] = [work(), work(), work()] as const;
    underWay.begin('command', first.ended);
    underWay.begin('command', second.ended);
    underWay.begin('print', print.ended);
    expect(underWay.kinds).toEqual(['command', 'print']);
    first.end();
    second.fail(new Error('x'));
    await Promise.allSettled([first.ended, second.ended]);
    print.end();
    await underWay.whenNone();
    expect(told).toEqual([['command'], ['command', 'print'], ['print'], []]);
  });

  test('is waited for with what was begun meanwhile', async () => {
    const underWay = new UnderWay();
    const [first, second] = [work(), work()] as const;
    underWay.begin('backup', first.ended);
    let isIdle = false;
    const idle = underWay.whenNone().then(() => {
      isIdle = true;
    });
    underWay.begin('print', second.ended);
    first.end();
    await first.ended;
    await new Promise((resolve) => setImmediate(resolve));
    expect(isIdle).toBe(false);
    second.end();
    await idle;
    expect(underWay.kinds).toEqual([]);
  });
});

describe('a station', () => {
  test('says that a command is under way from the moment in which it is called, and nothing of a question', async () => {
    const told: (readonly Begun[])[] = [];
    const { station, call } = await testStation({ onUnderWay: (kinds) => told.push(kinds) });
    const asked = call('station.status', {});
    expect(station.underWay()).toEqual([]);
    await asked;
    expect(told).toEqual([]);
    const signedIn = call('session.sign-in', { badge: 'HP10024' });
    expect(station.underWay()).toEqual(['command']);
    await station.whenIdle();
    expect((await signedIn).ok).toBe(false);
    expect(told).toEqual([['command'], []]);
  });

  test('says that a backup is under way until it is written', async () => {
    const told: (readonly Begun[])[] = [];
    const { station, expectOutput } = await testStation({ onUnderWay: (kinds) => told.push(kinds) });
    await expectOutput('station.setup', {
      name: 'Harrow Point',
      timeZone: 'Etc/UTC',
      lengthUnit: 'm',
      administrator: { name: 'Ilse Marrowby', badge: 'HP10017', pin: '271828' },
    });
    await expectOutput('session.sign-in', { badge: 'HP10017' });
    await expectOutput('backup.make', { file: join(await temporaryFolder(), 'backup.zip') });
    expect(station.underWay()).toContain('backup');
    await station.whenIdle();
    expect(told.at(-1)).toEqual([]);
    expect(told.flat()).toContain('backup');
  });
});
