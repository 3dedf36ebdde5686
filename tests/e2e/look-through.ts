/**
 * Every screen by the rules of axe-core in both themes, and by the rules of the house: nothing clipped, nothing to scroll
 * sideways, and Tab going round in the order in which the screen is read.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { procedure } from '../support/shipped-rules.ts';
import { fillWithDemo } from '../support/station-fixture.ts';
import { axeFaults, loadAxe } from './axe-faults.ts';
import { screensOfCamera } from './camera-screens.ts';
import { screens, screensOfFirstStart } from './every-screen.ts';
import {
  faultsAround,
  focusRecord,
  recordedScreens,
  recordOfScreen,
  type ScreenOrder,
} from './focus-record.ts';
import { type FocusRound, focusRound } from './focus-round.ts';
import { layoutFaults } from './layout-faults.ts';
import { badges, type PreparedDepot, prepareDepot } from './prepared-depot.ts';
import { type Look, launchBrowser, openStage, type Stage } from './stage.ts';
import { type Screen, signIn, throughTheWalk, type Visit, wordsIn } from './visit.ts';

interface Seen {
  readonly faults: readonly string[];
  readonly orders: readonly ScreenOrder[];
}

/** Colours and the order of focus are the same at every size, so they are followed at the smallest. */
const isSmallest = ({ width }: Look): boolean => width === 1366;
/** The record of the order is in English. */
const goesRound = (look: Look): boolean => look.language === 'en' && isSmallest(look);

const orderFile = new URL('./focus-order.txt', import.meta.url);
const recorded = recordedScreens(await readFile(orderFile, 'utf8'));

/** What a screen asked the station for may still come while Tab goes round; so it is given some more time where it differs. */
const roundAsRecorded = async (page: Page, session: CDPSession, screen: string): Promise<FocusRound> => {
  let round = await focusRound(page, session);
  for (let times = 0; times < 4 && recordOfScreen(screen, round.stops) !== recorded.get(screen); times += 1) {
    await page.waitForTimeout(500);
    round = await focusRound(page, session);
  }
  return round;
};

/** Everything that is wrong on the screens, one after another, in one window, and the order of focus where it is followed. */
const lookAt = async (visit: Visit, list: readonly Screen[], look: Look): Promise<Seen> => {
  const faults: string[] = [];
  const orders: ScreenOrder[] = [];
  const session = await visit.page.context().newCDPSession(visit.page);
  for (const { name, show, fitsTheWindow = false } of list) {
    try {
      await (await show(visit)).waitFor();
    } catch (error) {
      faults.push(`${name}: did not come. ${String(error)}`);
      continue;
    }
    await visit.page.evaluate(() => document.fonts.ready.then(() => undefined));
    const found = [
      ...(await axeFaults(visit.page, isSmallest(look))),
      ...(await layoutFaults(visit.page, fitsTheWindow)),
    ];
    if (goesRound(look)) {
      const round = await roundAsRecorded(visit.page, session, name);
      found.push(...round.faults, ...faultsAround(round.stops));
      orders.push({ screen: name, stops: round.stops });
    }
    faults.push(...found.map((fault) => `${name}: ${fault}`));
  }
  return { faults, orders };
};

/** In files of their own for each size of window, so that every processor has one. */
export const describeEveryScreen = (looks: readonly Look[]) =>
  describe.runIf(hasBrowser())('every screen', () => {
    let browser: Browser;
    let folder: string;
    let empty: Stage;
    let stage: Stage;
    let depot: PreparedDepot;

    beforeAll(async () => {
      folder = await mkdtemp(join(tmpdir(), 'srl-bench-test-'));
      browser = await launchBrowser();
      empty = await openStage(browser, join(folder, 'empty'));
      await fillWithDemo(join(folder, 'depot'));
      stage = await openStage(browser, join(folder, 'depot'));
      depot = await prepareDepot(stage);
    }, 180_000);
    afterAll(async () => {
      await browser?.close();
      await empty?.close();
      await stage?.close();
      await rm(folder, { recursive: true, force: true });
    });

    const orders: ScreenOrder[] = [];

    test.each(looks)(
      'has no fault that axe knows, clips nothing and scrolls nowhere sideways: $language, $theme, $width × $height',
      async (look) => {
        const faults: string[] = [];
        for (const [on, list] of [
          [empty, screensOfFirstStart],
          [stage, screens],
        ] as const) {
          const window = await on.openWindow(look);
          window.page.setDefaultTimeout(10_000);
          await loadAxe(window.page);
          const visit = { page: window.page, depot, say: wordsIn(look.language) };
          const seen = await lookAt(visit, list, look);
          orders.push(...seen.orders);
          faults.push(...seen.faults);
          faults.push(...window.faults.map((fault) => `the page reported: ${fault}`));
          await window.close();
        }
        expect(faults).toEqual([]);
      },
      480_000,
    );

    test.each(looks)(
      'of the camera and of pictures keeps to the same: $language, $theme, $width × $height',
      async (look) => {
        const window = await stage.openWindow(look);
        window.page.setDefaultTimeout(20_000);
        await loadAxe(window.page);
        const visit = { page: window.page, depot, say: wordsIn(look.language) };
        await signIn(visit, badges.inspector);
        const seen = await lookAt(visit, screensOfCamera, look);
        orders.push(...seen.orders);
        await window.close();
        expect([...seen.faults, ...window.faults]).toEqual([]);
      },
      120_000,
    );

    test.runIf(looks.some(goesRound))('takes the focus in the order that is recorded', async () => {
      await expect(focusRecord(orders)).toMatchFileSnapshot(fileURLToPath(orderFile));
    });

    test.each(looks)(
      'of the walk shows its check whole, and all defects to choose from: $language, $theme, $width × $height',
      async (look) => {
        const { page, close } = await stage.openWindow(look);
        const visit = { page, depot, say: wordsIn(look.language) };
        page.setDefaultTimeout(10_000);
        await signIn(visit, badges.inspector);
        const faults: string[] = [];
        const checks = await throughTheWalk(visit, async (at) => {
          faults.push(...(await layoutFaults(page, true)).map((fault) => `${at}: ${fault}`));
        });
        await close();
        expect(faults).toEqual([]);
        expect(checks).toBe(procedure.checks.length);
      },
      60_000,
    );
  });
