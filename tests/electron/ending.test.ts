/** How the shell ends while something is under way: the station's part is played here, so that time can be. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Taken } from '../../electron/carrier.ts';
import type { Ending as EndingClass, EndingOptions, Patience } from '../../electron/ending.ts';
import type { Language } from '../../src/domain/message.ts';
import { wordsIn } from '../../src/host/words.ts';
import { type Begun, UnderWay } from '../../src/station/under-way.ts';
import * as standIn from './stand-in/electron.ts';
import { PreventableEvent, type StandIn, startAfresh } from './stand-in/state.ts';
import { StandInWindow } from './stand-in/window.ts';

let electron: StandIn;
let Ending: typeof EndingClass;
let ending: EndingClass;
let underWay: UnderWay;
let taken: Taken[];
let happened: string[];
let language: Language;
let onOpen: (shown: unknown) => void;
let windows: { readonly kind: string; readonly window: StandInWindow; isKiosk: boolean }[];

const patience: Patience = { ofPersonMs: 60_000, ofSystemMs: 4_000, ofStationMs: 20_000 };

/** A work that goes on until it is told to end. */
const begin = (kind: Begun): (() => void) => {
  let end: () => void = () => undefined;
  underWay.begin(
    kind,
    new Promise<void>((resolve) => {
      end = resolve;
    }),
  );
  return end;
};

const openWindow = (): StandInWindow => {
  const window = new StandInWindow({});
  const shown = { kind: 'bench', window, isKiosk: false };
  windows.push(shown);
  window.once('closed', () => windows.splice(windows.indexOf(shown), 1));
  onOpen(shown);
  return window;
};

beforeEach(async () => {
  vi.useFakeTimers();
  electron = startAfresh();
  vi.resetModules();
  vi.doMock('electron', () => standIn);
  ({ Ending } = await import('../../electron/ending.ts'));
  underWay = new UnderWay();
  taken = [];
  happened = [];
  language = 'en';
  windows = [];
  ending = new Ending({
    station: {
      underWay: () => underWay.kinds,
      whenIdle: () => underWay.whenNone(),
      close: async () => void happened.push('station closed'),
    },
    carrier: { take: (now) => taken.push(now) },
    windows: {
      get all() {
        return windows;
      },
      get inFront() {
        return windows[0];
      },
      onOpen: (listener: (shown: unknown) => void) => {
        onOpen = listener;
      },
    } as unknown as EndingOptions['windows'],
    words: () => wordsIn(language),
    beforeClose: async () => void happened.push('put away'),
    patience,
  });
  ending.watch();
});

afterEach(async () => {
  if (electron.exitCode === undefined) {
    const over = ending.atOnce();
    await vi.runAllTimersAsync();
    await over;
  }
  vi.useRealTimers();
});

const settle = () => vi.advanceTimersByTimeAsync(1);

describe('the shell', () => {
  test('ends at once where nothing is under way, and closes the station first', async () => {
    const window = openWindow();
    await window.close();
    await settle();
    expect(electron.exitCode).toBe(0);
    expect(electron.boxes).toEqual([]);
    expect(happened.sort()).toEqual(['put away', 'station closed']);
    expect(taken).toEqual(['none']);
  });

  test.each([
    ['en', 'SRL Bench ends as soon as this is done:', 'A tag or a page is being printed.'],
    ['es', 'SRL Bench se cierra en cuanto termine esto:', 'Se está imprimiendo una etiqueta o una página.'],
  ] as const)(
    'tells in %s what it waits for, takes no command meanwhile, and ends when it is done',
    async (spoken, message, what) => {
      language = spoken;
      const window = openWindow();
      const end = begin('print');
      expect(await window.close()).toBe(false);
      await settle();
      expect(electron.openBox?.options.message).toBe(message);
      expect(electron.openBox?.options.detail).toContain(what);
      expect(taken).toEqual(['questions']);
      expect(await window.close()).toBe(false);
      await settle();
      expect(electron.boxes).toHaveLength(1);
      expect(electron.exitCode).toBeUndefined();
      end();
      await settle();
      expect(electron.openBox).toBeUndefined();
      expect(electron.exitCode).toBe(0);
      expect(taken).toEqual(['questions', 'none']);
    },
  );

  test('stays open where a person says so, and takes commands again', async () => {
    openWindow();
    begin('print');
    standIn.app.quit();
    await settle();
    electron.openBox?.choose('Keep open');
    await settle();
    expect(taken).toEqual(['questions', 'all']);
    expect(electron.exitCode).toBeUndefined();
  });

  test('lets a person choose after a minute: wait longer, keep open, or break it off', async () => {
    openWindow();
    begin('print');
    standIn.app.quit();
    await vi.advanceTimersByTimeAsync(59_000);
    expect(electron.boxes).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1_100);
    expect(electron.openBox?.options.buttons).toEqual(['Wait longer', 'Keep open', 'Break off and end']);
    electron.openBox?.choose('Wait longer');
    await settle();
    expect(electron.openBox?.options.buttons).toEqual(['Keep open']);
    await vi.advanceTimersByTimeAsync(60_100);
    expect(electron.exitCode).toBeUndefined();
    electron.openBox?.choose('Break off and end');
    await settle();
    expect(happened).toContain('station closed');
    expect(electron.exitCode).toBe(0);
  });

  test('lets one of two windows close while the other stays', async () => {
    const bench = openWindow();
    const desk = openWindow();
    begin('command');
    expect(await desk.close()).toBe(true);
    expect(await bench.close()).toBe(false);
  });

  test('holds the end of a Windows session up only while something is under way, and for four seconds at most', async () => {
    const window = openWindow();
    const idle = new PreventableEvent();
    begin('command');
    window.emit('query-session-end', idle);
    expect(idle.defaultPrevented).toBe(true);
    await vi.advanceTimersByTimeAsync(3_900);
    expect(electron.exitCode).toBeUndefined();
    await vi.advanceTimersByTimeAsync(200);
    expect(electron.exitCode).toBe(0);
    expect(electron.boxes).toEqual([]);
    expect(happened).toContain('station closed');
  });

  test('does not hold up a session that ends while nothing is under way', async () => {
    const window = openWindow();
    const event = new PreventableEvent();
    window.emit('query-session-end', event);
    expect(event.defaultPrevented).toBe(false);
    await settle();
    expect(electron.exitCode).toBe(0);
  });

  test('answers what is under way before it ends at SIGTERM, and asks nobody', async () => {
    openWindow();
    const end = begin('command');
    process.emit('SIGTERM');
    await settle();
    expect(electron.exitCode).toBeUndefined();
    end();
    await settle();
    expect(electron.exitCode).toBe(0);
    expect(electron.boxes).toEqual([]);
  });

  test('ends though the station does not close', async () => {
    openWindow();
    const stuck = new Ending({
      station: {
        underWay: () => [],
        whenIdle: async () => undefined,
        close: () => new Promise(() => undefined),
      },
      carrier: { take: () => undefined },
      windows: { all: [], inFront: undefined } as unknown as EndingOptions['windows'],
      words: () => wordsIn('en'),
      beforeClose: async () => undefined,
      patience,
    });
    void stuck.ask();
    await vi.advanceTimersByTimeAsync(19_000);
    expect(electron.exitCode).toBeUndefined();
    await vi.advanceTimersByTimeAsync(1_100);
    expect(electron.exitCode).toBe(0);
  });
});
