/** The desktop shell: one station, one window, and what the operating system does for them. No rule lives here. */
import { join } from 'node:path';
import { app, BrowserWindow, dialog, Menu, shell } from 'electron';
import { isRefusal, refusal } from '../src/domain/refusal.ts';
import { dataFolder, windowFolder } from '../src/host/data-folder.ts';
import { faultLog } from '../src/host/fault-log.ts';
import { keepDaily } from '../src/host/keep-daily.ts';
import { productFolder } from '../src/host/product-folder.ts';
import { readRendererFiles } from '../src/host/renderer-files.ts';
import type { ShellReport } from '../src/host/shell-process.ts';
import { surroundingsOf } from '../src/host/surroundings.ts';
import { languageOfLocale, wordsIn } from '../src/host/words.ts';
import { sentenceOf } from '../src/station/sentence.ts';
import { openStation } from '../src/station/station.ts';
import { connectCarrier } from './carrier.ts';
import { registerPageScheme, servePage } from './page-protocol.ts';
import { keepWindowsAtHome, openWindow } from './windows.ts';

/** Exit code of a start that was refused with a sentence, for whoever started the shell. */
const refusedCode = 1;

const optionOf = (name: string): string | undefined => {
  const index = process.argv.indexOf(name);
  return index < 0 ? undefined : process.argv[index + 1];
};

const { folder } = dataFolder(optionOf('--data'), process.env);
const language = () => languageOfLocale(optionOf('--language') ?? app.getLocale());

/** Tells whoever started the shell with `--report`, who then speaks to the person. */
const report = (what: ShellReport): boolean => {
  if (!process.argv.includes('--report') || process.send === undefined) return false;
  process.send(what);
  return true;
};

const giveUp = (sentence: string): void => {
  if (!report({ refused: sentence })) dialog.showErrorBox('SRL Bench', sentence);
  app.exit(refusedCode);
};

const comeToFront = (): void => {
  const [window] = BrowserWindow.getAllWindows();
  if (window?.isMinimized()) window.restore();
  window?.focus();
};

const openFile = async (path: string): Promise<void> => {
  const fault = await shell.openPath(path);
  if (fault !== '') throw new Error(fault);
};

const start = async (): Promise<void> => {
  await app.whenReady();
  const words = wordsIn(language());
  const files = await readRendererFiles(join(productFolder, 'dist', 'renderer'));
  if (files === undefined) return giveUp(words('page-not-built'));
  const station = await openStation({
    folder,
    productFolder,
    openFile,
    onFault: faultLog(folder),
    surroundings: surroundingsOf('electron', folder),
  });
  if (isRefusal(station)) return giveUp(sentenceOf(station, language()));
  const stopKeeping = keepDaily(station, folder);
  let closing = false;
  app.on('will-quit', (event) => {
    if (closing) return;
    closing = true;
    event.preventDefault();
    stopKeeping();
    void station.close().finally(() => app.exit(0));
  });
  app.on('window-all-closed', () => app.quit());
  app.on('second-instance', comeToFront);
  Menu.setApplicationMenu(null);
  keepWindowsAtHome();
  servePage(files);
  connectCarrier(station, words);
  await openWindow(join(productFolder, 'dist', 'electron', 'preload.cjs'));
  report({ open: true });
};

app.setPath('userData', windowFolder(folder));
app.enableSandbox();
registerPageScheme();
if (app.requestSingleInstanceLock()) {
  start().catch(() => giveUp(wordsIn(language())('window-failed')));
} else {
  giveUp(sentenceOf(refusal('station-already-open', { folder }), language()));
}
