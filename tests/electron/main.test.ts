/** The real main process and preload of the shell, over a stand-in for Electron whose windows are pages of a real Chromium. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openStation } from '../../src/station/station.ts';
import { hasBrowser } from '../support/browser.ts';
import { launchForShell, ShellRun, soon } from './shell-run.ts';
import * as standIn from './stand-in/electron.ts';
import type { StandIn } from './stand-in/state.ts';

vi.setConfig({ testTimeout: 60_000 });

let browser: Browser;
let run: ShellRun;
let electron: StandIn;

let page: Page;
/** What the page reported as an error since it came up. */
let complaints: string[];

describe.runIf(hasBrowser())('the shell', () => {
  /** One for all of them: none ends it, and each leaves it as it was. */
  beforeAll(async () => {
    browser = await launchForShell();
    run = await ShellRun.prepare(browser);
    ({ electron } = run);
    complaints = [];
    electron.context?.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    page = await run.open();
  }, 180_000);

  afterAll(async () => {
    await run?.close();
    await browser?.close();
  });

  test('prepares its scheme and its sandbox before the app is ready', async () => {
    const ready = electron.happened.indexOf('ready');
    for (const before of ['scheme app', 'sandbox', 'path userData']) {
      expect(electron.happened.indexOf(before)).toBeGreaterThanOrEqual(0);
      expect(electron.happened.indexOf(before)).toBeLessThan(ready);
    }
  });

  test('opens one window whose page is isolated, sandboxed and without Node', async () => {
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
    await page.waitForFunction(() => (document.getElementById('root')?.textContent ?? '').length > 20);
    expect(electron.windows[0]?.webContents.mainFrame.url).toMatch(/^app:\/\/srl-bench\//);
    expect(complaints).toEqual([]);
  });

  test('answers a malformed call with a sentence', async () => {
    for (const operation of [7, null, { name: 'station.status' }]) {
      const answer = await page.evaluate((name) => window.srlBench?.call(name as never, {}, 'en'), operation);
      expect(answer).toMatchObject({ ok: false, error: { code: 'body-malformed' } });
    }
  });

  test('does not answer a frame inside the page', async () => {
    await page.evaluate(() => document.body.append(document.createElement('iframe')));
    const inner = await soon(() => {
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
      const asked: string[][] = [];
      electron.windows[0]?.webContents.on('stand-in-navigation', (...what: string[]) => asked.push(what));
      const before = page.url();
      await page.evaluate((to) => window.location.assign(to), address);
      await soon(() => expect(asked).toEqual([[address, 'denied']]));
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
    const preventDefault = vi.fn();
    electron.windows[0]?.webContents.emit(name, { url, isMainFrame: false, preventDefault });
    expect(preventDefault.mock.calls.length > 0).toBe(prevented);
  });

  test('lets the page load itself anew, and it is still answered', async () => {
    await page.reload();
    const answer = await page.evaluate(() => window.srlBench?.call('station.status', {}, 'en'));
    expect(answer).toMatchObject({ ok: true });
  });

  test('opens no second window for the page', async () => {
    const asked: string[] = [];
    electron.windows[0]?.webContents.on('stand-in-asked-to-open', (action: string) => asked.push(action));
    await page.evaluate(() => window.open('https://elsewhere.invalid/'));
    await soon(() => expect(asked).toEqual(['deny']));
    await soon(() => expect(electron.context?.pages()).toHaveLength(1));
  });

  test('allows the page nothing of the PC that it asks for', async () => {
    const answers: boolean[] = [];
    for (const permission of ['media', 'geolocation', 'notifications', 'openExternal'] as const) {
      electron.session.permission?.({} as never, permission, (allowed) => answers.push(allowed), {} as never);
    }
    expect(answers).toEqual([false, false, false, false]);
  });

  test('allows the camera to its own page alone, and never with the microphone', async () => {
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
      electron.session.permission?.(
        {} as never,
        'media',
        (allowed) => answers.push(allowed),
        details as never,
      );
    electron.session.permission?.({} as never, 'display-capture', (allowed) => answers.push(allowed), {
      ...own,
      mediaTypes: ['video'],
    } as never);
    expect(answers).toEqual([true, false, false, false, false, false, false]);

    const check = (origin: string, mediaType: 'video' | 'audio') =>
      electron.session.permissionCheck?.(null, 'media', origin, { mediaType } as never);
    expect(check('app://srl-bench', 'video')).toBe(true);
    expect(check('app://srl-bench/', 'video')).toBe(true);
    expect(check('app://srl-bench', 'audio')).toBe(false);
    expect(check('https://elsewhere.invalid', 'video')).toBe(false);
  });

  test('serves files of the page only', async () => {
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
    run.bench.minimise();
    expect(run.bench.focusCount).toBe(0);
    standIn.app.emit('second-instance', {}, []);
    expect(run.bench.focusCount).toBe(1);
    expect(run.bench.isMinimized()).toBe(false);
  });

  test('gives no device, no certificate and no screen to anybody', async () => {
    const { session } = electron;
    const preventDefault = vi.fn();
    const answers: unknown[] = [];
    const event = { preventDefault };
    const choose = (answer?: unknown): void => void answers.push(answer);
    standIn.session.defaultSession.emit('select-hid-device', event, {}, choose);
    standIn.session.defaultSession.emit('select-usb-device', event, {}, choose);
    standIn.session.defaultSession.emit('select-serial-port', event, [], {}, choose);
    run.bench.webContents.emit('select-bluetooth-device', event, [{ deviceId: 'a' }], choose);
    standIn.app.emit('select-client-certificate', event, {}, 'https://elsewhere.invalid/', [{}], choose);
    standIn.app.emit('certificate-error', event, {}, 'https://elsewhere.invalid/', 'expired', {}, choose);
    expect(answers).toEqual([null, undefined, '', '', undefined, false]);
    expect(preventDefault).toHaveBeenCalledTimes(6);
    expect(session.devicePermission?.({ deviceType: 'usb' } as never)).toBe(false);
    session.bluetoothPairing?.({} as never, choose);
    session.displayMedia?.({} as never, choose);
    expect(answers.slice(6)).toEqual([{ confirmed: false }, {}]);
  });

  test('loads nothing from anywhere but the product', async () => {
    const loaded = await page.evaluate(() =>
      Promise.all(
        ['https://elsewhere.invalid/a.png', 'http://127.0.0.1:9/a.png'].map(
          (address) =>
            new Promise((resolve) => {
              const picture = new Image();
              picture.onload = () => resolve('loaded');
              picture.onerror = () => resolve('refused');
              picture.src = address;
            }),
        ),
      ),
    );
    expect(loaded).toEqual(['refused', 'refused']);
    const canceled = (url: string): boolean => {
      let answer = false;
      (
        electron.session.beforeRequest as unknown as (
          d: unknown,
          a: (r: { cancel?: boolean }) => void,
        ) => void
      )({ url }, ({ cancel }) => {
        answer = cancel === true;
      });
      return answer;
    };
    for (const url of ['https://elsewhere.invalid/', 'file:///etc/passwd', 'ws://127.0.0.1/', 'app://other/'])
      expect(canceled(url), url).toBe(true);
    for (const url of ['app://srl-bench/', 'blob:app://srl-bench/1', 'data:image/png;base64,'])
      expect(canceled(url), url).toBe(false);
  });

  test('saves what its page made, and nothing from elsewhere', async () => {
    const saved: string[] = [];
    run.bench.webContents.on('stand-in-download', (_url: string, how: string) => saved.push(how));
    await page.evaluate(() => {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob(['a']));
      link.download = 'a.csv';
      link.click();
    });
    await soon(() => expect(saved).toEqual(['allowed']));
    const event = { preventDefault: vi.fn() };
    standIn.session.defaultSession.emit('will-download', event, { getURL: () => 'app://srl-bench/main.js' });
    standIn.session.defaultSession.emit('will-download', event, { getURL: () => 'blob:https://elsewhere/1' });
    expect(event.preventDefault).toHaveBeenCalledTimes(2);
  });

  /** The last one: the shell of all the others ends with it. */
  test('has its developer tools only while it is not packaged', async () => {
    const preferences = () => run.bench.options.webPreferences;
    expect(preferences()).toMatchObject({ devTools: true, navigateOnDragDrop: false });
    await run.close();
    run = await ShellRun.prepare(browser);
    run.electron.isPackaged = true;
    await run.open();
    expect(preferences()).toMatchObject({ devTools: false, navigateOnDragDrop: false });
  });
});

describe('a start that cannot be', () => {
  afterEach(() => run.close());

  beforeEach(async () => {
    run = await ShellRun.prepare();
    ({ electron } = run);
  });

  test('on a folder that another program holds is told in a box, and ends', async () => {
    const holder = await openStation({ folder: run.folder });
    if (isRefusal(holder)) throw new Error(holder.code);
    await run.start();
    expect(await standIn.exited()).toBe(1);
    expect(electron.errorBoxes).toHaveLength(1);
    expect(electron.errorBoxes[0]?.content).toContain(run.folder);
    expect(electron.windows).toHaveLength(0);
    await holder.close();
  });

  /** The window of the first start comes forward, so there is nothing to tell whoever clicked twice. */
  test('as a second instance ends without a box and without touching the station', async () => {
    electron.isFirstInstance = false;
    await run.start();
    expect(await standIn.exited()).toBe(0);
    expect(electron.errorBoxes).toEqual([]);
    expect(electron.windows).toHaveLength(0);
  });

  test('as a second instance that reports to a terminal is refused with a sentence', async () => {
    electron.isFirstInstance = false;
    const reports: unknown[] = [];
    const send = process.send;
    /** The test runner speaks over the same line. */
    process.send = (message: unknown, ...rest: readonly unknown[]) => {
      const isReport = typeof message === 'object' && message !== null && 'refused' in message;
      if (isReport) reports.push(message);
      return isReport || (send !== undefined && Reflect.apply(send, process, [message, ...rest]) === true);
    };
    try {
      await run.start('--report', '--language', 'en');
      expect(await standIn.exited()).toBe(1);
      expect(reports).toEqual([{ refused: expect.stringContaining(run.folder) }]);
    } finally {
      if (send !== undefined) process.send = send;
    }
  });
});
