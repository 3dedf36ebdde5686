/** A station at a fixed hour, on the loopback host and in hand at once, and windows of a real Chromium that look at it. */
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { instant } from '../../src/domain/brand.ts';
import type { Language } from '../../src/domain/message.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openDoorway } from '../../src/host/doorway.ts';
import { builtPage } from '../../src/host/hosted-station.ts';
import { startWebHost } from '../../src/host/web-host.ts';
import type { InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { openStation } from '../../src/station/station.ts';
import { testBrowser, testBrowserArguments } from '../support/browser.ts';

export interface Look {
  readonly language: Language;
  readonly theme: 'light' | 'dark';
  readonly width: number;
  readonly height: number;
}

export interface Stage {
  /** The output of a call that must succeed, in a session of its own. */
  expectOutput<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>>;
  /** A window of its own, in which nobody is signed in. */
  openWindow(look: Look): Promise<StageWindow>;
  close(): Promise<void>;
}

export interface StageWindow {
  readonly page: Page;
  /** Everything that the page reported as an error until now. */
  readonly faults: readonly string[];
  close(): Promise<void>;
}

/** The same hour in every run, so that no date on a screen ever changes. */
const now = () => instant('2026-03-10T08:00:00.000Z');

/** A fake camera that shows a moving pattern, and that every window may use. */
const fakeCamera = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'] as const;

export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: testBrowser(), args: [...testBrowserArguments, ...fakeCamera] });

/** `elapsedMs` is the clock by which the station tells that nobody is there. */
export const openStage = async (
  browser: Browser,
  folder: string,
  elapsedMs?: () => number,
): Promise<Stage> => {
  const files = await builtPage();
  if (files === undefined) throw new Error('The page could not be built.');
  const station = await openStation({ folder, now, elapsedMs });
  if (isRefusal(station)) throw new Error(`The station did not open: ${station.code}`);
  const door = await openDoorway(0);
  const host = startWebHost({ station, files, door });
  return {
    expectOutput: async (operation, input) => {
      const result = await station.call({ session: 'stage', operation, input, language: 'en' });
      if (!result.ok) throw new Error(`${operation} was refused: ${result.error.sentence}`);
      return result.output as never;
    },
    openWindow: async (look) => {
      const context = await newContext(browser, look);
      const page = await context.newPage();
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error') faults.push(message.text());
      });
      await page.goto(door.newAddress());
      return { page, faults, close: () => context.close() };
    },
    close: async () => {
      await host.close();
      await station.close();
    },
  };
};

const newContext = (browser: Browser, { language, theme, width, height }: Look): Promise<BrowserContext> =>
  browser.newContext({
    viewport: { width, height },
    locale: language === 'es' ? 'es-ES' : 'en-GB',
    colorScheme: theme,
    reducedMotion: 'reduce',
  });
