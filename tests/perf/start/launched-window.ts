/** `npm start` over a data folder, in a window of the browser on this PC, and when its page was ready to be worked with. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, readFile, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { chromium, type Page } from 'playwright-core';
import { findBrowser } from '../../../src/host/browser.ts';
import { buildIfStale, launcherBundle, rendererBundle } from '../../../src/host/build.ts';
import { windowFolder } from '../../../src/host/data-folder.ts';
import { productFolder } from '../../../src/host/product-folder.ts';

export interface LaunchedWindow {
  /** Milliseconds from the start of the launcher's process until the scan field listened, by the clock of the page. */
  readonly readyMs: number;
  readonly page: Page;
  /** The process of the station. */
  readonly pid: number;
  /** As Ctrl-C ends it. */
  close(): Promise<void>;
}

export interface LaunchOptions {
  /** The data of the station. */
  readonly data: string;
  /** Where the browser that is told to be debugged, the window's own files and the like lie; kept from one start to the next. */
  readonly around: string;
  readonly display: string;
}

const patienceMs = 180_000;
/** Nobody looks at the page before it is long there: looking takes time from it. */
const undisturbedMs = 2500;

/** Page and launcher are built, as they are after the first start. */
export const makeReadyToStart = async (): Promise<void> => {
  await buildIfStale(rendererBundle, productFolder);
  await buildIfStale(launcherBundle, productFolder);
};

export const launchWindow = async ({ data, around, display }: LaunchOptions): Promise<LaunchedWindow> => {
  const browser = await debuggedBrowser(around);
  const profile = join(around, 'cache', 'srl-bench', basename(windowFolder(data)), 'browser');
  await forgetPort(profile);
  const child = spawn(process.execPath, ['src/host/start.mjs', '--data', data, '--language', 'en'], {
    cwd: productFolder,
    env: {
      PATH: process.env.PATH,
      HOME: around,
      TMPDIR: process.env.TMPDIR,
      XDG_CACHE_HOME: join(around, 'cache'),
      DISPLAY: display,
      SRL_BENCH_BROWSER: browser,
      ELECTRON_OVERRIDE_DIST_PATH: join(around, 'no-electron'),
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const startedAt = Date.now();
  const close = closing(child);
  try {
    const { page, readyAt } = await readyIn(profile);
    return { readyMs: readyAt - startedAt, page, pid: child.pid ?? 0, close };
  } catch (error) {
    await close();
    throw error;
  }
};

/** The same browser, which writes the port on which it lets itself be looked at into the folder of its profile. */
export const debuggedBrowser = async (around: string): Promise<string> => {
  const browser = await findBrowser();
  if (browser === undefined) throw new Error('No browser of the Chromium family is installed.');
  const path = join(around, 'browser.sh');
  await writeFile(path, `#!/bin/sh\nexec '${browser}' --remote-debugging-port=0 "$@"\n`);
  await chmod(path, 0o755);
  return path;
};

/** Milliseconds of the clock at which the page of the browser with this profile was ready. */
export const readyIn = async (
  profile: string,
): Promise<{ readonly page: Page; readonly readyAt: number }> => {
  const port = await portOf(profile);
  await setTimeout(undisturbedMs);
  const page = await pageOf(port);
  return { page, readyAt: await readyMoment(page) };
};

const portFile = (profile: string): string => join(profile, 'DevToolsActivePort');

/** An earlier browser has left it. */
export const forgetPort = (profile: string): Promise<void> => rm(portFile(profile), { force: true });

const portOf = async (profile: string): Promise<number> => {
  for (const until = Date.now() + patienceMs; Date.now() < until; await setTimeout(20)) {
    const [port = ''] = (await readFile(portFile(profile), 'utf8').catch(() => '')).split('\n');
    if (Number(port) > 0) return Number(port);
  }
  throw new Error('The window did not come.');
};

const pageOf = async (port: number): Promise<Page> => {
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  for (const until = Date.now() + patienceMs; Date.now() < until; await setTimeout(20)) {
    const page = browser.contexts().flatMap((context) => context.pages())[0];
    if (page !== undefined) return page;
  }
  throw new Error('The window has no page.');
};

/** The page marks the moment in which its scan field listens (`renderer/scan/scan-field.tsx`). */
const readyMoment = async (page: Page): Promise<number> => {
  const found = await page.waitForFunction(
    () => {
      const [mark] = performance.getEntriesByName('scan-field');
      return mark === undefined ? undefined : performance.timeOrigin + mark.startTime;
    },
    undefined,
    { timeout: patienceMs, polling: 20 },
  );
  return (await found.jsonValue()) ?? 0;
};

const closing = (child: ChildProcess) => async (): Promise<void> => {
  const ended = once(child, 'exit');
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill('SIGINT');
  await ended;
};
