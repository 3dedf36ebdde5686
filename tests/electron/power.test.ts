/** Sleep, lock, battery and shutdown: what the station is asked for, what the pages are told, and for how long the PC is kept awake. */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { PowerOptions, stayAwake as StayAwake, watchPower as WatchPower } from '../../electron/power.ts';
import * as standIn from './stand-in/electron.ts';
import { PreventableEvent, type StandIn, startAfresh } from './stand-in/state.ts';

let electron: StandIn;
let stayAwake: typeof StayAwake;
let watchPower: typeof WatchPower;

beforeEach(async () => {
  electron = startAfresh();
  vi.doMock('electron', () => standIn);
  ({ stayAwake, watchPower } = await import('../../electron/power.ts'));
});

test('the PC is kept awake while something is under way, by one blocker at a time, and not for a moment longer', () => {
  const tell = stayAwake();
  tell([]);
  expect(electron.blockersStarted).toBe(0);
  tell(['command']);
  tell(['command', 'print']);
  tell(['print']);
  expect(electron.blockers.size).toBe(1);
  expect(electron.blockersStarted).toBe(1);
  tell([]);
  expect(electron.blockers.size).toBe(0);
  tell(['backup']);
  expect(electron.blockers.size).toBe(1);
});

describe('the shell', () => {
  let happened: string[];

  beforeEach(() => {
    happened = [];
    const webContents = { send: (_channel: string, news: unknown) => happened.push(JSON.stringify(news)) };
    watchPower({
      station: { lockSessions: () => void happened.push('locked') },
      windows: { all: [{ window: { webContents } }] } as unknown as PowerOptions['windows'],
      log: ({ event }) => void happened.push(`log ${event}`),
      keep: () => void happened.push('kept'),
      onShutdown: () => void happened.push('ends'),
    });
  });

  const lookAgain = '{"news":"look-again"}';

  test.each([
    ['suspend', ['log suspended', 'locked', lookAgain]],
    ['lock-screen', ['log screen-locked', 'locked', lookAgain]],
    ['resume', ['log resumed', lookAgain, 'kept']],
    ['unlock-screen', ['log resumed', lookAgain, 'kept']],
    ['on-battery', ['log on-battery', '{"news":"power","onBattery":true}']],
    ['on-ac', ['log on-mains', '{"news":"power","onBattery":false}']],
  ])('at %s does what is to be done, and nothing else', (event, done) => {
    standIn.powerMonitor.emit(event);
    expect(happened).toEqual(done);
  });

  test('holds a shutdown up until it has ended by itself', () => {
    const event = new PreventableEvent();
    standIn.powerMonitor.emit('shutdown', event);
    expect(event.defaultPrevented).toBe(true);
    expect(happened).toEqual(['log system-ends', 'ends']);
  });
});
