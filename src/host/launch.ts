/** `npm start`: opens the station in Electron, else in a browser window, else gives the address to open. */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { isRefusal } from '../domain/refusal.ts';
import { sentenceOf } from '../station/sentence.ts';
import { type AppWindow, openAppWindow } from './app-window.ts';
import { findBrowser } from './browser.ts';
import { buildIfStale, electronBundle } from './build.ts';
import { dataFolder, windowFolder } from './data-folder.ts';
import { hasDisplay } from './display.ts';
import { findElectron } from './electron-runtime.ts';
import { checkHeadless } from './headless-check.ts';
import {
  builtPage,
  type HostedStation,
  type NewAddress,
  type OnListening,
  openHostedStation,
} from './hosted-station.ts';
import { untilInterrupted } from './interruption.ts';
import { type LaunchOptions, readLaunchOptions } from './launch-options.ts';
import { productFolder } from './product-folder.ts';
import { type ShellStart, startShell } from './shell-process.ts';
import { languageOfEnvironment, wordsIn } from './words.ts';

const options = readLaunchOptions(process.argv.slice(2));
const language = options?.language ?? languageOfEnvironment(process.env);
const words = wordsIn(language);
const say = (line: string): void => void process.stdout.write(`${line}\n`);
const complain = (sentence: string, code: number): number => {
  process.stderr.write(`${sentence}\n`);
  return code;
};

const launch = async ({ data, port, ...asked }: LaunchOptions): Promise<number> => {
  const { folder } = dataFolder(data, process.env);
  const interrupted = untilInterrupted();
  const windowed = hasDisplay(process.platform, process.env) && !asked['headless-check'];
  if (windowed) {
    const shell = await tryElectron(folder, asked);
    if (shell?.kind === 'refused') return complain(shell.sentence, 1);
    if (shell?.kind === 'open') {
      say(words('opened-in-electron'));
      await Promise.race([shell.closed, interrupted]);
      await shell.close();
      return 0;
    }
  }
  let window: BrowserWindow | undefined;
  const hosted = await openHosted(folder, port, async (newAddress) => {
    if (windowed) window = await openBrowserWindow(newAddress, folder);
  });
  try {
    if (typeof hosted === 'string') return complain(hosted, 1);
    if (asked['headless-check']) return await checkOnce(hosted);
    await untilClosed(hosted, window, interrupted);
    return 0;
  } finally {
    await window?.close();
    if (typeof hosted !== 'string') await hosted.close();
  }
};

interface BrowserWindow extends AppWindow {
  readonly browser: string;
}

/** `undefined` where there is no browser on this PC. */
const openBrowserWindow = async (
  newAddress: NewAddress,
  folder: string,
): Promise<BrowserWindow | undefined> => {
  const browser = await findBrowser();
  if (browser === undefined) return undefined;
  const window = await openAppWindow(browser, newAddress(), join(windowFolder(folder), 'browser'));
  return { ...window, browser };
};

const tryElectron = async (
  folder: string,
  { kiosk, desk }: Pick<LaunchOptions, 'kiosk' | 'desk'>,
): Promise<ShellStart | undefined> => {
  const runtime = await findElectron(productFolder);
  if (runtime === undefined || (await builtPage()) === undefined) return undefined;
  try {
    await buildIfStale(electronBundle, productFolder);
    const windows = [...(kiosk ? ['--kiosk'] : []), ...(desk ? ['--desk'] : [])];
    return await startShell(runtime, productFolder, ['--data', folder, '--language', language, ...windows]);
  } catch {
    return undefined;
  }
};

/** The sentence of what is wrong, where there is no host. */
const openHosted = async (
  folder: string,
  port: number | undefined,
  onListening: OnListening,
): Promise<HostedStation | string> => {
  const open = (each: number) => openHostedStation({ folder, port: each }, onListening);
  const last = port === undefined ? await lastPort(folder) : undefined;
  let hosted = await open(port ?? last ?? 0);
  if (last !== undefined && 'problem' in hosted && hosted.problem === 'port-taken') hosted = await open(0);
  if (isRefusal(hosted)) return sentenceOf(hosted, language);
  if ('problem' in hosted) return words(hosted.problem, { port: port ?? 0 });
  await keepPort(folder, hosted.origin);
  return hosted;
};

const checkOnce = async (hosted: HostedStation): Promise<number> => {
  const checked = await checkHeadless(hosted).catch(() => undefined);
  if (checked === undefined) return complain(words('check-failed'), 1);
  say(words('check-passed', { ...checked, origin: hosted.origin }));
  return 0;
};

const untilClosed = async (
  hosted: HostedStation,
  window: BrowserWindow | undefined,
  interrupted: Promise<void>,
): Promise<void> => {
  const closed = window?.closed.then((started) => (started ? 'closed' : 'not started'));
  const early = await Promise.race([closed, interrupted, settled()]);
  const isOpen = window !== undefined && early !== 'not started';
  say(isOpen ? words('opened-in-browser', { browser: window.browser }) : words('open-this-address'));
  hosted.tellAddresses(say);
  await Promise.race([isOpen ? closed : hosted.deserted, interrupted]);
};

/** A program that cannot be started says so at once. */
const settled = (): Promise<undefined> => setTimeout(200, undefined);

/**
 * The browser keeps what a window remembers by its address, port included; so the port stays the same while it is free. It is
 * no secret: any program of this PC can see it, and what lets in is the key.
 */
const portFile = (folder: string): string => join(windowFolder(folder), 'port');

const lastPort = async (folder: string): Promise<number | undefined> => {
  const port = Number(await readFile(portFile(folder), 'utf8').catch(() => ''));
  return Number.isInteger(port) && port > 1023 && port < 65_536 ? port : undefined;
};

const keepPort = async (folder: string, origin: string): Promise<void> => {
  try {
    await mkdir(dirname(portFile(folder)), { recursive: true });
    await writeFile(portFile(folder), new URL(origin).port);
  } catch {
    // A window that forgets its language is no reason not to open.
  }
};

if (options === undefined) process.exitCode = complain(words('usage-start'), 2);
else if (options.help) say(words('usage-start'));
else {
  const code = await launch(options).catch(() => complain(words('internal-error'), 1));
  process.exit(code);
}
