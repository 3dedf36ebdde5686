/** The real main process and preload of the shell, over a stand-in for Electron whose windows are pages of a real Chromium. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import { buildIfStale, electronBundle, rendererBundle } from '../../src/host/build.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { openStation } from '../../src/station/station.ts';
import { hasBrowser, testBrowser, testBrowserArguments } from '../support/browser.ts';
import * as standIn from './stand-in/electron.ts';

let browser: Browser;
let electron: standIn.StandIn;
let folder: string;

const argv = process.argv;

const startShell = async (): Promise<void> => {
  process.argv = [...argv.slice(0, 2), '--data', folder];
  vi.resetModules();
  vi.doMock('electron', () => standIn);
  await import('../../electron/main.ts');
};

const openShell = async (): Promise<Page> => {
  await startShell();
  await vi.waitFor(() => expect(electron.windows[0]?.isShown).toBe(true), { timeout: 20_000 });
  return electron.windows[0]!.webContents.page;
};

const closeShell = async (): Promise<void> => {
  for (const window of [...electron.windows]) await window.close();
  if (electron.handlers.size > 0) await standIn.exited();
};

beforeEach(async () => {
  electron = standIn.startAfresh();
  folder = await mkdtemp(join(tmpdir(), 'srl-bench-shell-'));
});

afterEach(async () => {
  process.argv = argv;
  await rm(folder, { recursive: true, force: true });
});

describe.runIf(hasBrowser())('the shell', () => {
  beforeAll(async () => {
    await buildIfStale(rendererBundle, productFolder);
    await buildIfStale(electronBundle, productFolder);
    browser = await chromium.launch({ executablePath: testBrowser(), args: [...testBrowserArguments] });
  }, 120_000);

  afterAll(() => browser?.close());

  beforeEach(async () => {
    electron.context = await browser.newContext();
    electron.preloadSource = await readFile(join(productFolder, 'dist', 'electron', 'preload.cjs'), 'utf8');
  });

  afterEach(async () => {
    await closeShell();
    await electron.context?.close();
  });

  test('prepares its scheme and its sandbox before the app is ready', async () => {
    await openShell();
    const ready = electron.happened.indexOf('ready');
    for (const before of ['scheme app', 'sandbox', 'path userData']) {
      expect(electron.happened.indexOf(before)).toBeGreaterThanOrEqual(0);
      expect(electron.happened.indexOf(before)).toBeLessThan(ready);
    }
  });

  test('opens one window whose page is isolated, sandboxed and without Node', async () => {
    await openShell();
    expect(electron.windows).toHaveLength(1);
    expect(electron.windows[0]?.options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
    });
  });

  test('shows the real page of the station under its own scheme, which finds nothing to complain of in its policy', async () => {
    const complaints: string[] = [];
    electron.context?.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    const page = await openShell();
    await page.waitForFunction(() => (document.getElementById('root')?.textContent ?? '').length > 20);
    expect(electron.windows[0]?.webContents.mainFrame.url).toMatch(/^app:\/\/srl-bench\//);
    expect(complaints).toEqual([]);
  });

  test('carries a call from the page to the station and the answer back', async () => {
    const page = await openShell();
    const answer = await page.evaluate(() => window.srlBench?.call('station.status', {}, 'en'));
    expect(answer).toEqual({ ok: true, output: { state: 'empty' } });
  });

  test('gives the page the call and nothing else', async () => {
    const page = await openShell();
    const given = await page.evaluate(() => ({
      srlBench: Object.keys(window.srlBench ?? {}),
      globals: ['require', 'process', 'module', 'electron', 'ipcRenderer'].filter((name) => name in window),
    }));
    expect(given).toEqual({ srlBench: ['call'], globals: [] });
  });

  test('answers a malformed call with a sentence', async () => {
    const page = await openShell();
    for (const operation of [7, null, { name: 'station.status' }]) {
      const answer = await page.evaluate((name) => window.srlBench?.call(name as never, {}, 'en'), operation);
      expect(answer).toMatchObject({ ok: false, error: { code: 'body-malformed' } });
    }
  });

  test('does not answer a frame inside the page', async () => {
    const page = await openShell();
    await page.evaluate(() => document.body.append(document.createElement('iframe')));
    const inner = await vi.waitFor(() => {
      const frame = page.frames()[1];
      if (frame === undefined) throw new Error('no frame yet');
      return frame;
    });
    const answer = await inner.evaluate(() => {
      const { standInInvoke } = window as unknown as {
        standInInvoke: (...args: unknown[]) => Promise<unknown>;
      };
      return standInInvoke('station:call', { operation: 'station.status', input: {}, language: 'en' });
    });
    expect(answer).toMatchObject({ ok: false, error: { code: 'caller-refused' } });
    expect(await inner.evaluate(() => 'srlBench' in window)).toBe(false);
  });

  test.each(['https://elsewhere.invalid/', 'http://127.0.0.1:9/'])(
    'does not let the page be led away to %s',
    async (address) => {
      const page = await openShell();
      const asked: string[][] = [];
      electron.windows[0]?.webContents.on('stand-in-navigation', (...what: string[]) => asked.push(what));
      const before = page.url();
      await page.evaluate((to) => window.location.assign(to), address);
      await vi.waitFor(() => expect(asked).toEqual([[address, 'denied']]));
      expect(page.url()).toBe(before);
      expect(await page.evaluate(() => typeof window.srlBench?.call)).toBe('function');
    },
  );

  /** A plain Chromium never asks about some of these, so the question is put to the shell as Electron would put it. */
  test.each([
    ['will-navigate', 'app://srl-bench.elsewhere/', true],
    ['will-navigate', 'file:///etc/passwd', true],
    ['will-navigate', 'app://srl-bench/#/bench', false],
    ['will-frame-navigate', 'app://other/', true],
    ['will-frame-navigate', 'https://elsewhere.invalid/', true],
    ['will-redirect', 'app://srl-bench/', true],
    ['will-attach-webview', '', true],
  ])('asked by %s about “%s”, prevents it: %s', async (name, url, prevented) => {
    await openShell();
    const preventDefault = vi.fn();
    electron.windows[0]?.webContents.emit(name, { url, isMainFrame: false, preventDefault });
    expect(preventDefault.mock.calls.length > 0).toBe(prevented);
  });

  test('lets the page load itself anew, and it is still answered', async () => {
    const page = await openShell();
    await page.reload();
    const answer = await page.evaluate(() => window.srlBench?.call('station.status', {}, 'en'));
    expect(answer).toMatchObject({ ok: true });
  });

  test('opens no second window for the page', async () => {
    const page = await openShell();
    const asked: string[] = [];
    electron.windows[0]?.webContents.on('stand-in-asked-to-open', (action: string) => asked.push(action));
    await page.evaluate(() => window.open('https://elsewhere.invalid/'));
    await vi.waitFor(() => expect(asked).toEqual(['deny']));
    await vi.waitFor(() => expect(electron.context?.pages()).toHaveLength(1));
  });

  test('allows the page nothing of the PC that it asks for', async () => {
    await openShell();
    const answers: boolean[] = [];
    for (const permission of ['media', 'geolocation', 'notifications', 'openExternal'] as const) {
      electron.permission?.({} as never, permission, (allowed) => answers.push(allowed), {} as never);
    }
    expect(answers).toEqual([false, false, false, false]);
  });

  test('allows the camera to its own page alone, and never with the microphone', async () => {
    await openShell();
    const own = { requestingUrl: 'app://srl-bench/', isMainFrame: true };
    const asked = [
      { ...own, mediaTypes: ['video'] },
      { ...own, mediaTypes: ['video', 'audio'] },
      { ...own, mediaTypes: ['audio'] },
      { ...own, isMainFrame: false, mediaTypes: ['video'] },
      { ...own, requestingUrl: 'app://srl-bench.elsewhere/', mediaTypes: ['video'] },
      { ...own, requestingUrl: 'https://elsewhere.invalid/', mediaTypes: ['video'] },
    ];
    const answers: boolean[] = [];
    for (const details of asked)
      electron.permission?.({} as never, 'media', (allowed) => answers.push(allowed), details as never);
    electron.permission?.({} as never, 'display-capture', (allowed) => answers.push(allowed), {
      ...own,
      mediaTypes: ['video'],
    } as never);
    expect(answers).toEqual([true, false, false, false, false, false, false]);

    const check = (origin: string, mediaType: 'video' | 'audio') =>
      electron.permissionCheck?.(null, 'media', origin, { mediaType } as never);
    expect(check('app://srl-bench', 'video')).toBe(true);
    expect(check('app://srl-bench/', 'video')).toBe(true);
    expect(check('app://srl-bench', 'audio')).toBe(false);
    expect(check('https://elsewhere.invalid', 'video')).toBe(false);
  });

  test('serves files of the page only', async () => {
    await openShell();
    const serve = electron.schemes.get('app')!;
    const statusOf = async (address: string, method = 'GET') =>
      (await serve(new Request(address, { method }))).status;
    expect(await statusOf('app://srl-bench/')).toBe(200);
    for (const path of [
      '../package.json',
      '..%2fpackage.json',
      '%2e%2e/package.json',
      'electron/main.js',
      'index.html',
    ]) {
      expect(await statusOf(`app://srl-bench/${path}`), path).toBe(404);
    }
    expect(await statusOf('app://elsewhere/')).toBe(404);
    expect(await statusOf('app://srl-bench/', 'POST')).toBe(404);
  });

  test('comes to the front when the program is started a second time', async () => {
    await openShell();
    standIn.app.emit('second-instance');
    expect(electron.windows[0]?.focusCount).toBe(1);
  });

  test('ends with its window and gives the data folder free', async () => {
    await openShell();
    await electron.windows[0]?.close();
    expect(await standIn.exited()).toBe(0);
    const again = await openStation({ folder });
    if (isRefusal(again)) throw new Error(again.code);
    await again.close();
  });
});

describe('a start that cannot be', () => {
  test('on a folder that another program holds is told in a box, and ends', async () => {
    const holder = await openStation({ folder });
    if (isRefusal(holder)) throw new Error(holder.code);
    await startShell();
    expect(await standIn.exited()).toBe(1);
    expect(electron.errorBoxes).toHaveLength(1);
    expect(electron.errorBoxes[0]?.content).toContain(folder);
    expect(electron.windows).toHaveLength(0);
    await holder.close();
  });

  test('as a second instance is told, and ends without touching the station', async () => {
    electron.isFirstInstance = false;
    await startShell();
    expect(await standIn.exited()).toBe(1);
    expect(electron.errorBoxes).toHaveLength(1);
    expect(electron.windows).toHaveLength(0);
  });
});
