/** Runs the real main process and preload of the shell in this process, over the stand-in for Electron. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { expect, vi } from 'vitest';
import { buildIfStale, electronBundle, rendererBundle } from '../../src/host/build.ts';
import { windowFolder } from '../../src/host/data-folder.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import type { InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { testBrowser, testBrowserArguments } from '../support/browser.ts';
import * as standIn from './stand-in/electron.ts';
import { type StandIn, startAfresh } from './stand-in/state.ts';
import type { StandInWindow } from './stand-in/window.ts';

const argv = process.argv;
let starts = 0;

/** The browser of a test file, and the bundles that its windows show. */
export const launchForShell = async (): Promise<Browser> => {
  await buildIfStale(rendererBundle, productFolder);
  await buildIfStale(electronBundle, productFolder);
  return chromium.launch({
    executablePath: testBrowser(),
    args: [...testBrowserArguments],
    handleSIGHUP: false,
    handleSIGINT: false,
    handleSIGTERM: false,
  });
};

/** Windows come up and pages answer within this, on a machine that has other work too. */
export const slowMs = 20_000;

/** Waits until what is expected is so. */
export const soon = <Result>(expectation: () => Result | Promise<Result>): Promise<Result> =>
  vi.waitFor(expectation, { timeout: slowMs, interval: 50 });

export class ShellRun {
  readonly electron: StandIn;
  readonly folder: string;

  private constructor(electron: StandIn, folder: string) {
    this.electron = electron;
    this.folder = folder;
  }

  /** Nothing is started yet. Without a browser no window can come up. */
  static async prepare(browser?: Browser, data?: string): Promise<ShellRun> {
    const electron = startAfresh();
    const folder = data ?? (await mkdtemp(join(tmpdir(), 'srl-bench-shell-')));
    if (browser !== undefined) {
      electron.context = await browser.newContext({ locale: 'en-GB' });
      electron.preloadSource = await readFile(join(productFolder, 'dist', 'electron', 'preload.cjs'), 'utf8');
    }
    return new ShellRun(electron, folder);
  }

  async start(...args: readonly string[]): Promise<void> {
    process.argv = [...argv.slice(0, 2), '--data', this.folder, ...args];
    vi.doMock('electron', () => standIn);
    starts += 1;
    /** A program starts anew each time; what it imports keeps nothing of an earlier one. */
    await import(/* @vite-ignore */ `../../electron/main.ts?start=${starts}`);
  }

  /** The page of the bench, when it has come up. */
  async open(...args: readonly string[]): Promise<Page> {
    await this.start(...args);
    await soon(() => expect(this.bench.isShown).toBe(true));
    return this.bench.webContents.page;
  }

  get bench(): StandInWindow {
    const [window] = this.electron.windows;
    if (window === undefined) throw new Error('There is no window.');
    return window;
  }

  /** Ends whatever still runs, as the system would, and forgets what it kept. */
  async close(): Promise<void> {
    process.argv = argv;
    if (this.electron.exitCode === undefined && this.electron.handlers.size > 0) {
      standIn.powerMonitor.emit('shutdown');
      await standIn.exited();
    }
    await this.electron.context?.close();
    await rm(this.folder, { recursive: true, force: true });
    await rm(windowFolder(this.folder), { recursive: true, force: true });
  }
}

/** The first administrator of a station that is set up in a moment. */
export const administrator = { name: 'Ilse Marrowby', badge: 'HP10017', pin: '271828' } as const;

export const setUp = (page: Page): Promise<unknown> =>
  ask(page, 'station.setup', { name: 'Harrow Point', timeZone: 'Etc/UTC', lengthUnit: 'm', administrator });

/** The output of a call that a page makes and that must succeed. */
export const ask = async <Name extends OperationName>(
  page: Page,
  name: Name,
  input: InputOf<Name>,
): Promise<OutputOf<Name>> => {
  const answer = await page.evaluate(([operation, given]) => window.srlBench?.call(operation, given, 'en'), [
    name,
    input,
  ] as const);
  const { ok, output, error } = answer as {
    ok: boolean;
    output: OutputOf<Name>;
    error?: { code: string; sentence: string };
  };
  if (!ok) throw new Error(`${name} was refused: ${error?.code}: ${error?.sentence}`);
  return output;
};
