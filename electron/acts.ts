/** Does what our page asks of the shell: each act is checked here, and asked only by the top frame of a window of ours. */
import { ipcMain, powerMonitor } from 'electron';
import {
  type ShellAct,
  type ShellAnswer,
  type ShellState,
  shellActSchema,
} from '../src/station/shell-bridge.ts';
import { actChannel } from './channel.ts';
import { isOurTopFrame } from './own-frame.ts';
import { printPage, type ShownDocuments } from './printing.ts';
import type { ShellWindow, ShellWindows } from './windows.ts';

export interface ActsOptions {
  readonly windows: ShellWindows;
  readonly documents: ShownDocuments;
  /** Told when a window speaks another language. */
  readonly onLanguage: () => void;
  readonly openDesk: () => Promise<void>;
}

export const connectActs = (options: ActsOptions): void =>
  ipcMain.handle(actChannel, async (event, asked: unknown): Promise<ShellAnswer | ShellState> => {
    const shown = isOurTopFrame(event) ? options.windows.of(event.sender) : undefined;
    const act = shellActSchema.safeParse(asked);
    if (shown === undefined || !act.success) return { ok: false, why: 'refused' };
    return perform(act.data, shown, options);
  });

const perform = async (
  act: ShellAct,
  shown: ShellWindow,
  { documents, onLanguage, openDesk }: ActsOptions,
): Promise<ShellAnswer | ShellState> => {
  switch (act.act) {
    case 'speak':
      shown.language = act.language;
      onLanguage();
      return { ok: true };
    case 'look': {
      const { wasRecovered } = shown;
      shown.wasRecovered = false;
      return { wasRecovered, onBattery: powerMonitor.onBatteryPower };
    }
    case 'open-desk':
      await openDesk();
      return { ok: true };
    case 'print-page':
      return printPage(shown.window.webContents);
    case 'open-pdf':
      return documents.open(act.fileName, act.pdfBase64);
  }
};
