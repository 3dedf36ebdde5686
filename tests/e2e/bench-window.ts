/** A real station on the loopback host, seen through a real Chromium window, with a keyboard scanner in hand. */
import { type Browser, chromium, type Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { type HostedStation, openHostedStation } from '../../src/host/hosted-station.ts';
import { testBrowser, testBrowserArguments } from '../support/browser.ts';
import { temporaryFolder } from '../support/station-fixture.ts';
import { WedgeScanner } from './wedge-scanner.ts';

export interface BenchWindow {
  readonly page: Page;
  readonly folder: string;
  /** Types a code as a keyboard scanner does: 5 ms between the characters, by the clock of the key events, then Enter. */
  scan(code: string): Promise<void>;
  /** The same scanner, to be set otherwise. */
  readonly scanner: WedgeScanner;
  /** Scans the command symbols of these names, one after another. */
  command(...names: readonly string[]): Promise<void>;
}

export interface BenchWindowOptions {
  readonly folder?: string;
  readonly locale?: string;
  readonly colorScheme?: 'light' | 'dark';
  readonly width?: number;
  readonly height?: number;
  /** The X display that a window with a real keyboard opens on; without it the window is on none. */
  readonly display?: string;
}

export const openBenchWindow = async (options: BenchWindowOptions = {}): Promise<BenchWindow> => {
  const folder = options.folder ?? (await temporaryFolder());
  const hosted = await openHostedStation({ folder, port: 0 });
  if (!('origin' in hosted)) throw new Error(`The station did not open: ${JSON.stringify(hosted)}`);
  const browser = await chromium.launch({
    executablePath: testBrowser(),
    args: [...testBrowserArguments],
    ...(options.display === undefined
      ? {}
      : { headless: false, env: { ...process.env, DISPLAY: options.display } }),
  });
  onTestFinished(() => close(browser, hosted));
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1366, height: options.height ?? 768 },
    locale: options.locale ?? 'en-GB',
    colorScheme: options.colorScheme ?? 'light',
  });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  onTestFinished(() => {
    if (faults.length > 0) throw new Error(`The page reported: ${faults.join('; ')}`);
  });
  await page.goto(hosted.newAddress());
  const scanner = new WedgeScanner(page, await context.newCDPSession(page));
  return {
    page,
    folder,
    scanner,
    scan: (code) => scanner.scan(code),
    command: async (...names) => {
      for (const name of names) await scanner.scan(`XC${name.toUpperCase()}`);
    },
  };
};

const close = async (browser: Browser, hosted: HostedStation): Promise<void> => {
  await browser.close();
  await hosted.close();
};
