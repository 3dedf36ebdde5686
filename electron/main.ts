/** The desktop shell: one station, its windows, and what the operating system does for them. No rule lives here. */
import { join } from 'node:path';
import { app, dialog, shell } from 'electron';
import { isRefusal, refusal } from '../src/domain/refusal.ts';
import { dataFolder, windowFolder } from '../src/host/data-folder.ts';
import { faultLog } from '../src/host/fault-log.ts';
import { productFolder } from '../src/host/product-folder.ts';
import { readRendererFiles } from '../src/host/renderer-files.ts';
import type { ShellReport } from '../src/host/shell-process.ts';
import { surroundingsOf } from '../src/host/surroundings.ts';
import { languageOfLocale, wordsIn } from '../src/host/words.ts';
import { sentenceOf } from '../src/station/sentence.ts';
import { openStation } from '../src/station/station.ts';
import { registerPageScheme, servePage } from './page-protocol.ts';
import { stayAwake } from './power.ts';
import { openShell } from './shell.ts';
import { startOptions } from './start-options.ts';
import { WindowStates } from './window-state.ts';

/** Exit code of a start that was refused with a sentence, for whoever started the shell. */
const refusedCode = 1;

const options = startOptions(process.argv);
const { folder } = dataFolder(options.data, process.env);
const language = () => options.language ?? languageOfLocale(app.getLocale());
const log = faultLog(folder);

/** Tells whoever started the shell with `--report`, who then speaks to the person. */
const report = (what: ShellReport): boolean => {
  if (!options.reports || process.send === undefined) return false;
  process.send(what);
  return true;
};

const giveUp = (sentence: string): void => {
  if (!report({ refused: sentence })) dialog.showErrorBox('SRL Bench', sentence);
  app.exit(refusedCode);
};

const openFile = async (path: string): Promise<void> => {
  const fault = await shell.openPath(path);
  if (fault !== '') throw new Error(fault);
};

/** The station opens while the runtime gets ready. */
const start = async (): Promise<void> => {
  const [files, station] = await Promise.all([
    readRendererFiles(join(productFolder, 'dist', 'renderer')),
    openStation({
      folder,
      productFolder,
      openFile,
      onFault: log,
      onUnderWay: stayAwake(),
      surroundings: surroundingsOf('electron', folder),
    }),
    app.whenReady(),
  ]);
  if (isRefusal(station)) return giveUp(sentenceOf(station, language()));
  if (files === undefined) {
    await station.close();
    return giveUp(wordsIn(language())('page-not-built'));
  }
  servePage(files);
  const states = await WindowStates.read(windowFolder(folder));
  await openShell({ station, states, folder, language: language(), options });
  report({ open: true });
};

/** The window of the first start has come forward; a terminal is told besides. */
const leaveToFirst = (): void => {
  report({ refused: sentenceOf(refusal('station-already-open', { folder }), language()) });
  app.exit(options.reports ? refusedCode : 0);
};

app.setPath('userData', windowFolder(folder));
app.enableSandbox();
registerPageScheme();
if (app.requestSingleInstanceLock()) {
  start().catch((error: unknown) => {
    log(error, 'shell');
    giveUp(wordsIn(language())('window-failed'));
  });
} else {
  leaveToFirst();
}
