/** What somebody before the shell sees of it, in Electron itself where its runtime is, else over the stand-in. */
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openStation } from '../../src/station/station.ts';
import { hasBrowser } from '../support/browser.ts';
import { type ShellDriver, type ShellDrivers, shellDrivers } from './driver.ts';
import { ask, soon } from './shell-run.ts';

vi.setConfig({ testTimeout: 60_000 });

let drivers: ShellDrivers;
let shell: ShellDriver;
let page: Page;

describe.runIf(hasBrowser())('the shell', () => {
  beforeAll(async () => {
    drivers = await shellDrivers();
  }, 120_000);

  afterAll(() => drivers?.close());

  beforeEach(async () => {
    shell = await drivers.open();
    page = shell.bench;
  }, 60_000);

  afterEach(() => shell.close());

  test('carries a call from the page to the station and the answer back', async () => {
    expect(await ask(page, 'station.status', {})).toEqual({ state: 'empty' });
  });

  test('gives the page the call, the acts and the news, which it cannot change, and nothing else', async () => {
    const given = await page.evaluate(() => ({
      srlBench: Object.keys(window.srlBench ?? {}),
      globals: ['require', 'process', 'module', 'electron', 'ipcRenderer'].filter((name) => name in window),
      isFrozen: Object.isFrozen(window.srlBench),
    }));
    expect(given).toEqual({ srlBench: ['call', 'act', 'onNews'], globals: [], isFrozen: true });
  });

  test('opens the desk in a window of its own at the wish of the page, and comes back to it the second time', async () => {
    for (let time = 0; time < 2; time += 1)
      expect(await page.evaluate(() => window.srlBench?.act({ act: 'open-desk' }))).toEqual({ ok: true });
    await soon(() => expect(shell.pages()).toHaveLength(2));
    expect(shell.pages()[1]?.url()).toMatch(/#\/desk$/);
  });

  test('comes back where it was after its page broke down, and answers again', async () => {
    await page.evaluate(() => {
      window.location.hash = '#/register';
    });
    const again = await shell.crashBench();
    await soon(async () => expect(await ask(again, 'station.status', {})).toEqual({ state: 'empty' }));
    expect(again.url()).toMatch(/#\/register$/);
  });

  test('ends with its last window and gives the data folder free', async () => {
    await shell.end();
    const again = await openStation({ folder: shell.folder });
    if (isRefusal(again)) throw new Error(again.code);
    await again.close();
  });
});
