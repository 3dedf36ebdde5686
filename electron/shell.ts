/** Puts the shell together over an open station: every concern of it, and then the first windows. */
import { join } from 'node:path';
import { app, dialog } from 'electron';
import type { Language } from '../src/domain/message.ts';
import { windowFolder } from '../src/host/data-folder.ts';
import { eventLog, faultLog, logWritten } from '../src/host/fault-log.ts';
import { keepDaily } from '../src/host/keep-daily.ts';
import { productFolder } from '../src/host/product-folder.ts';
import { wordsIn } from '../src/host/words.ts';
import type { Station } from '../src/station/station.ts';
import { connectActs } from './acts.ts';
import { keepWindowsAtHome } from './at-home.ts';
import { connectCarrier } from './carrier.ts';
import { Ending } from './ending.ts';
import { openLink } from './external-links.ts';
import { setKiosk, watchKiosk } from './kiosk.ts';
import { keepMenuBar } from './menu-bar.ts';
import { watchPower } from './power.ts';
import { ShownDocuments } from './printing.ts';
import { watchBreakdowns } from './recovery.ts';
import { type StartOptions, startOptions } from './start-options.ts';
import type { WindowStates } from './window-state.ts';
import { ShellWindows } from './windows.ts';

export interface ShellParts {
  readonly station: Station;
  readonly states: WindowStates;
  /** Of the data. */
  readonly folder: string;
  /** Of the PC, until a window speaks another one. */
  readonly language: Language;
  readonly options: StartOptions;
}

/** Resolves when the page of the bench has come up. */
export const openShell = async ({
  station,
  states,
  folder,
  language,
  options,
}: ShellParts): Promise<void> => {
  const log = eventLog(folder);
  const fault = faultLog(folder);
  const windows = new ShellWindows({
    preload: join(productFolder, 'dist', 'electron', 'preload.cjs'),
    icon: join(productFolder, 'assets', 'icon', 'srl-bench-256.png'),
    states,
    language,
    hasDeveloperTools: !app.isPackaged,
  });
  const words = () => wordsIn(windows.inFront?.language ?? language);
  const documents = new ShownDocuments(windowFolder(folder));
  await documents.clear();
  const stopKeeping = keepDaily(station, folder);
  const carrier = connectCarrier(station, wordsIn(language));
  /** Electron would show the stack in a box. */
  const onUncaught = (error: unknown): void => {
    fault(error, 'shell');
    dialog.showErrorBox('SRL Bench', words()('shell-fault'));
    void ending.atOnce();
  };
  process.on('uncaughtException', onUncaught);
  const ending = new Ending({
    station,
    carrier,
    windows,
    words,
    beforeClose: async () => {
      stopKeeping();
      process.off('uncaughtException', onUncaught);
      await Promise.all([states.flush(), documents.clear(), logWritten(folder)]);
    },
  });
  const openDesk = async (): Promise<void> => {
    const wasKiosk = states.of('desk')?.isKiosk === true;
    const desk = await windows.open('desk').catch((error: unknown) => fault(error, 'shell'));
    if (desk !== undefined && wasKiosk && !desk.isKiosk) setKiosk(windows, desk, true);
  };

  /** Where it was closed while the desk stayed, it comes back. */
  const openBench = async (): Promise<void> => {
    await windows.open('bench').catch((error: unknown) => fault(error, 'shell'));
  };

  keepWindowsAtHome((address) => void openLink(windows, words(), address).catch(() => undefined));
  ending.watch();
  watchKiosk(windows);
  watchBreakdowns({ windows, words, log, onGivenUp: () => void ending.atOnce() });
  watchPower({
    station,
    windows,
    log,
    keep: () => void station.keep().catch((error: unknown) => fault(error, 'keep')),
    onShutdown: () => void ending.atOnce(),
  });
  const putMenu = keepMenuBar({ windows, words, ending, openDesk });
  connectActs({ windows, documents, onLanguage: putMenu, openDesk });
  app.on('second-instance', (_event, args) => {
    void (startOptions(args).hasDesk ? openDesk() : openBench());
  });

  const wasKiosk = states.of('bench')?.isKiosk === true;
  const bench = await windows.open('bench');
  if (options.isKiosk || wasKiosk) setKiosk(windows, bench, true);
  if (options.hasDesk) await openDesk();
};
