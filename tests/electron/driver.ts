/** The shell as somebody before it sees it: in Electron itself where its runtime is, else over the stand-in. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, type Browser, type ElectronApplication, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { buildIfStale, electronBundle, rendererBundle } from '../../src/host/build.ts';
import { windowFolder } from '../../src/host/data-folder.ts';
import { hasDisplay, isRootOnLinux } from '../../src/host/display.ts';
import { findElectron } from '../../src/host/electron-runtime.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { launchForShell, ShellRun, soon } from './shell-run.ts';
import * as standIn from './stand-in/electron.ts';

export interface ShellDriver {
  readonly folder: string;
  /** The page of the bench. */
  readonly bench: Page;
  /** Every page that stands in a window now. */
  pages(): readonly Page[];
  /** Ends the process of the page of the bench; resolves to the page that comes in its place. */
  crashBench(): Promise<Page>;
  /** Presses the cross of the last window; resolves when the program has ended. */
  end(): Promise<void>;
  /** Whatever still runs is ended, and what it kept is gone. */
  close(): Promise<void>;
}

export interface ShellDrivers {
  readonly kind: 'Electron' | 'the stand-in';
  open(data?: string): Promise<ShellDriver>;
  close(): Promise<void>;
}

export const shellDrivers = async (): Promise<ShellDrivers> => {
  const runtime = hasDisplay(process.platform, process.env) ? await findElectron(productFolder) : undefined;
  if (runtime === undefined) {
    const browser = await launchForShell();
    return {
      kind: 'the stand-in',
      open: (data) => openOverStandIn(browser, data),
      close: () => browser.close(),
    };
  }
  await buildIfStale(rendererBundle, productFolder);
  await buildIfStale(electronBundle, productFolder);
  return {
    kind: 'Electron',
    open: (data) => openInElectron(runtime, data),
    close: async () => undefined,
  };
};

const openOverStandIn = async (browser: Browser, data?: string): Promise<ShellDriver> => {
  const run = await ShellRun.prepare(browser, data);
  await run.open('--language', 'en');
  return {
    folder: run.folder,
    get bench() {
      return run.bench.webContents.page;
    },
    pages: () => run.electron.windows.map(({ webContents }) => webContents.page),
    crashBench: async () => {
      const { webContents } = run.bench;
      const before = webContents.page;
      webContents.forcefullyCrashRenderer();
      await soon(() => {
        expect(webContents.page).not.toBe(before);
        expect(webContents.isGone).toBe(false);
      });
      return webContents.page;
    },
    end: async () => {
      for (const window of [...run.electron.windows]) await window.close();
      await standIn.exited();
    },
    close: () => run.close(),
  };
};

const openInElectron = async (runtime: string, data?: string): Promise<ShellDriver> => {
  const folder = data ?? (await mkdtemp(join(tmpdir(), 'srl-bench-shell-')));
  const shell: ElectronApplication = await _electron.launch({
    executablePath: runtime,
    args: [
      ...(isRootOnLinux() ? ['--no-sandbox'] : []),
      join(productFolder, 'dist', 'electron', 'main.js'),
      '--data',
      folder,
      '--language',
      'en',
    ],
  });
  const ended = new Promise<void>((resolve) => shell.once('close', () => resolve()));
  const bench = await shell.firstWindow();
  return {
    folder,
    bench,
    pages: () => shell.windows(),
    crashBench: async () => {
      await shell.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
      );
      await bench.waitForEvent('crash').catch(() => undefined);
      return shell.windows()[0] ?? shell.firstWindow();
    },
    end: async () => {
      await shell.evaluate(({ BrowserWindow }) => {
        for (const window of BrowserWindow.getAllWindows()) window.close();
      });
      await ended;
    },
    close: async () => {
      await shell.close().catch(() => undefined);
      await rm(folder, { recursive: true, force: true });
      await rm(windowFolder(folder), { recursive: true, force: true });
    },
  };
};
