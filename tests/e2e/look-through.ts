/** Every screen by the rules of axe-core and by the rules of the house: nothing clipped, nothing to scroll sideways. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { procedure } from '../support/shipped-rules.ts';
import { screensOfCamera } from './camera-screens.ts';
import { screens, screensOfFirstStart } from './every-screen.ts';
import { badges, type PreparedDepot, prepareDepot } from './prepared-depot.ts';
import { type Look, launchBrowser, openStage, type Stage } from './stage.ts';
import { type Screen, signIn, throughTheWalk, type Visit, wordsIn } from './visit.ts';

const axeSource = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds, each with the element and why. */
const axeFaults = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await page.evaluate<AxeResults>(
    `axe.run(document, { resultTypes: ['violations'], preload: false })`,
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `axe ${id}: ${html.slice(0, 160)} ${failureSummary ?? ''}`),
  );
};

/** Elements whose words are wider than the box that shows them, and boxes that scroll where they must not. */
const layoutFaults = (page: Page, fitsTheWindow: boolean): Promise<readonly string[]> =>
  page.evaluate((mustFit) => {
    const found: string[] = [];
    const nameOf = (element: Element) =>
      `<${element.localName} class="${element.getAttribute('class') ?? ''}"> “${(element.textContent ?? '').trim().slice(0, 60)}”`;
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth) found.push('the window scrolls sideways');
    for (const element of document.querySelectorAll<HTMLElement>('body *')) {
      const isForEyes = element.clientWidth > 1 && element.clientHeight > 1;
      const hasText = [...element.childNodes].some(
        (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== '',
      );
      const style = getComputedStyle(element);
      if (!isForEyes || element.closest('svg') !== null || style.visibility === 'hidden') continue;
      const isTooWide = element.scrollWidth > element.clientWidth + 1;
      if (isTooWide && hasText) found.push(`clipped or spilled: ${nameOf(element)}`);
      else if (isTooWide && /auto|scroll/.test(style.overflowX))
        found.push(`scrolls sideways: ${nameOf(element)}`);
      const isTooHigh = element.scrollHeight > element.clientHeight + 1;
      if (mustFit && isTooHigh && style.overflowY !== 'visible')
        found.push(`does not fit: ${nameOf(element)}`);
    }
    return found;
  }, fitsTheWindow);

/** Everything that is wrong on the screens, one after another, in one window. */
const faultsOn = async (visit: Visit, list: readonly Screen[]): Promise<readonly string[]> => {
  const faults: string[] = [];
  for (const { name, show, fitsTheWindow = false } of list) {
    try {
      await (await show(visit)).waitFor();
    } catch (error) {
      faults.push(`${name}: did not come. ${String(error)}`);
      continue;
    }
    await visit.page.evaluate(() => document.fonts.ready.then(() => undefined));
    const found = [...(await axeFaults(visit.page)), ...(await layoutFaults(visit.page, fitsTheWindow))];
    faults.push(...found.map((fault) => `${name}: ${fault}`));
  }
  return faults;
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
      stage = await openStage(browser, join(folder, 'depot'));
      depot = await prepareDepot(stage);
    });
    afterAll(async () => {
      await browser?.close();
      await empty?.close();
      await stage?.close();
      await rm(folder, { recursive: true, force: true });
    });

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
          await window.page.evaluate(axeSource);
          faults.push(...(await faultsOn({ page: window.page, depot, say: wordsIn(look.language) }, list)));
          faults.push(...window.faults.map((fault) => `the page reported: ${fault}`));
          await window.close();
        }
        expect(faults).toEqual([]);
      },
      240_000,
    );

    test.each(looks)(
      'of the camera and of pictures keeps to the same: $language, $theme, $width × $height',
      async (look) => {
        const window = await stage.openWindow(look);
        window.page.setDefaultTimeout(20_000);
        await window.page.evaluate(axeSource);
        const visit = { page: window.page, depot, say: wordsIn(look.language) };
        await signIn(visit, badges.inspector);
        const faults = await faultsOn(visit, screensOfCamera);
        await window.close();
        expect([...faults, ...window.faults]).toEqual([]);
      },
      120_000,
    );

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
