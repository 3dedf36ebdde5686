/** Opens the station in Electron, else in a browser window, else gives the address to open. */
import { setTimeout } from 'node:timers/promises';
import type { Language } from '../domain/message.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { sentenceOf } from '../station/sentence.ts';
import { findBrowser } from './browser.ts';
import { type BrowserWindow, type EarlyWindow, openBrowserWindow, showsWindow } from './browser-window.ts';
import { buildIfStale, electronBundle } from './build.ts';
import { dataFolder } from './data-folder.ts';
import { findElectron } from './electron-runtime.ts';
import { checkHeadless } from './headless-check.ts';
import { builtPage, type HostedStation, hostStation } from './hosted-station.ts';
import { untilInterrupted } from './interruption.ts';
import type { LaunchOptions } from './launch-options.ts';
import { keepPort, openOwnDoor } from './own-door.ts';
import { productFolder } from './product-folder.ts';
import { type ShellStart, startShell } from './shell-process.ts';
import { languageOfEnvironment, type Words, wordsIn } from './words.ts';

/** Ends the program with a sentence. */
class Complaint extends Error {}

interface Launch {
  readonly options: LaunchOptions;
  readonly folder: string;
  readonly language: Language;
  readonly words: Words;
  readonly interrupted: Promise<void>;
}

/** The code with which the program ends, when it does. `options`: absent where they make no sense. */
export const launch = async (
  options: LaunchOptions | undefined,
  early: EarlyWindow | undefined,
): Promise<number> => {
  const language = options?.language ?? languageOfEnvironment(process.env);
  const words = wordsIn(language);
  if (options === undefined) return complain(words('usage-start'), 2);
  if (options.help) return say(words('usage-start'));
  const { folder } = dataFolder(options.data, process.env);
  const started: Launch = { options, folder, language, words, interrupted: untilInterrupted() };
  try {
    const isInElectron = early === undefined && showsWindow(options) && (await openInElectron(started));
    if (!isInElectron) await openOverLoopback(started, early);
    return 0;
  } catch (error) {
    return complain(error instanceof Complaint ? error.message : words('internal-error'), 1);
  }
};

const say = (line: string): number => {
  process.stdout.write(`${line}\n`);
  return 0;
};

const complain = (sentence: string, code: number): number => {
  process.stderr.write(`${sentence}\n`);
  return code;
};

/** False where Electron's runtime cannot be had, or does not start. */
const openInElectron = async (launch: Launch): Promise<boolean> => {
  const shell = await tryElectron(launch);
  if (shell === undefined || shell.kind === 'failed') return false;
  if (shell.kind === 'refused') throw new Complaint(shell.sentence);
  say(launch.words('opened-in-electron'));
  await Promise.race([shell.closed, launch.interrupted]);
  await shell.close();
  return true;
};

const tryElectron = async ({ options, folder, language }: Launch): Promise<ShellStart | undefined> => {
  const runtime = await findElectron(productFolder);
  if (runtime === undefined || (await builtPage()) === undefined) return undefined;
  try {
    await buildIfStale(electronBundle, productFolder);
    const windows = [...(options.kiosk ? ['--kiosk'] : []), ...(options.desk ? ['--desk'] : [])];
    return await startShell(runtime, productFolder, ['--data', folder, '--language', language, ...windows]);
  } catch {
    return undefined;
  }
};

const openOverLoopback = async (launch: Launch, early: EarlyWindow | undefined): Promise<void> => {
  const { options, folder, language, words } = launch;
  let window = early?.window;
  let hosted: HostedStation | Refusal | undefined;
  try {
    const files = await builtPage();
    if (files === undefined) throw new Complaint(words('page-not-built'));
    const door = early?.door ?? (await openOwnDoor(folder, options.port));
    if (door === undefined) throw new Complaint(words('port-taken', { port: options.port ?? 0 }));
    const browser = window === undefined && showsWindow(options) ? await findBrowser() : undefined;
    if (browser !== undefined) window = await openBrowserWindow(browser, door, folder);
    hosted = await hostStation({ folder, files, door });
    if (isRefusal(hosted)) throw new Complaint(sentenceOf(hosted, language));
    await keepPort(folder, door.port);
    if (options['headless-check']) await checkOnce(hosted, words);
    else await untilClosed(hosted, window, launch);
  } finally {
    await window?.close();
    if (hosted !== undefined && !isRefusal(hosted)) await hosted.close();
  }
};

const checkOnce = async (hosted: HostedStation, words: Words): Promise<void> => {
  const checked = await checkHeadless(hosted).catch(() => undefined);
  if (checked === undefined) throw new Complaint(words('check-failed'));
  say(words('check-passed', { ...checked, origin: hosted.origin }));
};

const untilClosed = async (
  hosted: HostedStation,
  window: BrowserWindow | undefined,
  { words, interrupted }: Launch,
): Promise<void> => {
  const closed = window?.closed.then((started) => (started ? 'closed' : 'not started'));
  const soon = await Promise.race([closed, interrupted, settled()]);
  const isOpen = window !== undefined && soon !== 'not started';
  say(isOpen ? words('opened-in-browser', { browser: window.browser }) : words('open-this-address'));
  hosted.tellAddresses(say);
  await Promise.race([isOpen ? closed : hosted.deserted, interrupted]);
};

/** A program that cannot be started says so at once. */
const settled = (): Promise<undefined> => setTimeout(200, undefined);
