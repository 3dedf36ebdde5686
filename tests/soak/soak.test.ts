/**
 * Hours at bench and desk in minutes: operations of two windows on one station, in real pages, while the windows are reloaded,
 * closed and crash. `SOAK_OPERATIONS=10000` makes two hours of it, `SOAK_SEED` another order of things.
 */
import { cp, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { grouped } from '../../src/domain/grouped.ts';
import { launchBrowser } from '../e2e/stage.ts';
import { hasBrowser } from '../support/browser.ts';
import { seededRandom } from '../support/seeded-random.ts';
import { demo, demoStation, temporaryFolder } from '../support/station-fixture.ts';
import type { Held } from './soak-station.ts';
import { ask, type PageHeld, type PageSample, SoakWindow } from './soak-window.ts';
import {
  type Acknowledged,
  type Depot,
  screensOf,
  stayAtWindow,
  workAtWindow,
  workOfEveryKind,
} from './soak-work.ts';
import { SoakedStation } from './soaked-station.ts';
import { type Point, slopeOf, slopeWithin } from './trend.ts';

const operations = Number(process.env.SOAK_OPERATIONS ?? 2_000);
const seed = Number(process.env.SOAK_SEED ?? 20_261_130);
/** For a busy machine; a quiet one needs a tenth of it. */
const limitMs = 120_000 + operations * 240;
/** Looks at what is held, in the whole run. */
const looks = 24;
/** Of so many operations the first part is left aside: what is loaded when it is first needed comes there. */
const warmUp = 0.3;

/** A folder with the depot and a printer, and what is there. */
const prepared = async (): Promise<{ readonly folder: string; readonly depot: Depot }> => {
  const { expectOutput, close, folder: made } = await demoStation();
  await expectOutput('session.sign-in', { badge: demo.administrator });
  const folder = await temporaryFolder();
  const printed = join(folder, 'printed');
  await mkdir(printed);
  const { printerId } = await expectOutput('printer.save', {
    settings: {
      kind: 'folder',
      name: 'Bench printer',
      stock: { widthMm: 100, heightMm: 50 },
      folder: printed,
      withPicture: false,
    },
    tagKinds: ['status'],
  });
  const { devices } = await expectOutput('device.list', { limit: 500 });
  const ready = [];
  for (const { benchId } of devices) {
    const { refused } = await expectOutput('custody.check', { benchId, userId: 'P006' });
    if (refused === undefined) ready.push(benchId);
  }
  await close();
  await cp(made, join(folder, 'data'), { recursive: true });
  const half = Math.floor(ready.length / 2);
  return {
    folder: join(folder, 'data'),
    depot: {
      atBench: ready.slice(0, half),
      atDesk: ready.slice(half),
      everywhere: devices.map(({ benchId }) => benchId),
      printerId,
    },
  };
};

const last = <Item>(items: readonly Item[]): Item => items.at(-1) as Item;
const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Growth from there to the end, by the slope of all looks, and what was held in the first third of it. */
const growthOf = (looked: readonly (Held & { readonly at: number })[], what: keyof Held, from = warmUp) => {
  const points = looked
    .filter(({ at }) => at >= operations * from)
    .map((each): Point => ({ at: each.at, value: each[what] }));
  const middle = meanOf(points.slice(0, Math.ceil(points.length / 3)).map(({ value }) => value));
  return { middle, grown: slopeOf(points) * operations * (1 - from) };
};

describe.runIf(hasBrowser() && process.platform === 'linux')('two windows on one station', () => {
  test(
    `stay as they are over ${operations} operations, reloads, closes and crashes, and lose nothing`,
    async () => {
      const { folder, depot } = await prepared();
      const station = await SoakedStation.open({ folder, startsAt: '2026-03-10T08:00:00.000Z', speed: 96 });
      onTestFinished(() => station.kill());
      const browser: Browser = await launchBrowser();
      onTestFinished(() => browser.close());
      const bench = new SoakWindow(browser, station, { badge: demo.inspector, screens: screensOf.bench });
      const desk = new SoakWindow(browser, station, { badge: demo.attendant, screens: screensOf.desk });
      await bench.open();
      await desk.open();

      const acknowledged: Acknowledged = { signed: [], checkedOut: [], tags: [] };
      await workOfEveryKind({ window: bench, depot, acknowledged, random: seededRandom(seed + 2) });
      const done = (): number => bench.operations + desk.operations;
      const looked: (Held & { readonly at: number })[] = [];
      let looksBegun = 0;
      const onPiece = async (window: SoakWindow): Promise<void> => {
        const at = done();
        if (at >= ((looksBegun + 1) * operations) / looks) {
          looksBegun += 1;
          looked.push({ ...(await station.held()), at });
        }
        if (window.samples.length < looksBegun) await window.sample();
      };
      const started = performance.now();
      const work = (window: SoakWindow, place: 'bench' | 'desk', own: number) =>
        workAtWindow({
          window,
          place,
          depot,
          acknowledged,
          random: seededRandom(seed + own),
          goesOn: () => done() < operations,
          onPiece: () => onPiece(window),
        });
      const happened = await Promise.all([work(bench, 'bench', 0), work(desk, 'desk', 1)]);
      const seconds = (performance.now() - started) / 1000;
      const stayed = await Promise.all(
        [bench, desk].map((window, index) =>
          stayAtWindow({ window, depot, acknowledged, random: seededRandom(seed + 3 + index) }, 30),
        ),
      );

      const [verified] = await bench.callAll(ask('ledger.verify', {}));
      const kept = await Promise.all(
        acknowledged.signed.map((inspection) => bench.callAll(ask('inspection.show', { inspection }))),
      );
      const atEnd = await station.held();
      const faults = [...bench.faults, ...desk.faults];
      await bench.close();
      await desk.close();
      const { faults: ofStation, code } = await station.end();

      console.log(
        `${done()} operations in ${seconds.toFixed(0)} s, ${acknowledged.signed.length} inspections signed, ${acknowledged.checkedOut.length} devices out, ${JSON.stringify(happened)}; first ${JSON.stringify(looked[0])}; last ${JSON.stringify(atEnd)}`,
      );
      expect(faults).toEqual([]);
      expect(ofStation).toEqual([]);
      expect(code).toBe(0);
      expect(verified).toMatchObject({ sound: true, faults: [] });
      for (const [{ inspection }] of kept) expect(inspection.state).toBe('signed');
      expect(acknowledged.signed.length).toBeGreaterThan(operations / 1000);
      expect(acknowledged.checkedOut.length).toBeGreaterThan(operations / 200);

      // Of the station: no more than a tenth from the middle to the end, nor a handle, a connection, a timer or a listener.
      const heap = growthOf(looked, 'heapMb');
      // What draws the tags leaves room that the system's allocator keeps for the next ones, so it is looked at from later on.
      const resident = growthOf(looked, 'residentMb', 0.5);
      expect(heap.grown, JSON.stringify(looked)).toBeLessThan(Math.max(heap.middle / 10, 4));
      expect(resident.grown, JSON.stringify(looked)).toBeLessThan(Math.max(resident.middle / 10, 30));
      const afterWarmUp = looked.filter(({ at }) => at >= operations * warmUp);
      const early = afterWarmUp[0]!;
      for (const what of ['files', 'connections', 'listeners'] as const)
        expect(last(afterWarmUp)[what] - early[what], what).toBeLessThanOrEqual(0);
      expect(Math.max(...afterWarmUp.map(({ timers }) => timers))).toBeLessThanOrEqual(early.timers + 6);
      expect(Math.max(...looked.map(({ sockets }) => sockets))).toBeLessThan(40);
      // SQLite folds its log back after 1,000 pages of 4,096 bytes; what is read meanwhile lets it grow further (sqlite.org/wal.html).
      expect(Math.max(...looked.map(({ logMb }) => logMb))).toBeLessThan(4 * 4.1);

      // Of the pages: over 1,000 operations of one page, of those that come and go and of those that stay.
      const samples = [bench, desk].flatMap((window) => [
        ...grouped(window.samples, ({ load }) => load).values(),
      ]);
      const slopeOfPages = (groups: readonly (readonly PageSample[])[], what: keyof PageHeld): number =>
        slopeWithin(
          groups.map((group) =>
            group.map((sample): Point => ({ at: sample.age / 1000, value: sample[what] })),
          ),
        );
      const grown = {
        heapMb: slopeOfPages(stayed, 'heapMb'),
        nodes: slopeOfPages(samples, 'nodes'),
        listeners: slopeOfPages(samples, 'listeners'),
      };
      const told = JSON.stringify({ grown, stayed });
      console.log(told);
      expect(grown.heapMb, told).toBeLessThan(2);
      expect(grown.nodes, told).toBeLessThan(1500);
      expect(grown.listeners, told).toBeLessThan(150);
    },
    limitMs,
  );
});

test('a slope is that of the line through the points, and of several lines that begin apart the one that they share', () => {
  const line = [0, 1, 2, 3].map((at) => ({ at, value: 5 + 2 * at }));
  expect(slopeOf(line)).toBeCloseTo(2, 10);
  expect(slopeWithin([line, line.map(({ at, value }) => ({ at: at + 7, value: value - 40 }))])).toBeCloseTo(
    2,
    10,
  );
  expect(slopeOf([{ at: 1, value: 3 }])).toBe(0);
});
