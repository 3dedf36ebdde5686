/** Puts the menu in place, anew whenever another window comes to the front or a window speaks another language. */
import { app, Menu } from 'electron';
import type { Words } from '../src/host/words.ts';
import { askInBox } from './box.ts';
import type { Ending } from './ending.ts';
import { openLink } from './external-links.ts';
import { kioskKey, setKiosk } from './kiosk.ts';
import { menuTemplate } from './menu.ts';
import { printPage } from './printing.ts';
import type { ShellWindows } from './windows.ts';

export interface MenuBarOptions {
  readonly windows: ShellWindows;
  readonly words: () => Words;
  readonly ending: Ending;
  readonly openDesk: () => Promise<void>;
}

/** What comes back puts it in place now. */
export const keepMenuBar = ({ windows, words, ending, openDesk }: MenuBarOptions): (() => void) => {
  const say = (message: string, detail: string): void =>
    void askInBox(windows, {
      type: 'info',
      message,
      detail,
      answers: [{ answer: 'read', label: words()('box-ok') }],
      otherwise: 'read',
    });
  const print = async (): Promise<void> => {
    const shown = windows.inFront;
    if (shown === undefined) return;
    const printed = await printPage(shown.window.webContents);
    if (!printed.ok && printed.why === 'failed') say(words()('print-failed'), words()('print-failed-detail'));
  };
  const fillScreen = async (): Promise<void> => {
    const shown = windows.inFront;
    if (shown === undefined || shown.isKiosk) return;
    const answer = await askInBox<'fill' | 'leave'>(windows, {
      type: 'question',
      message: words()('kiosk-enter'),
      detail: words()('kiosk-leave', { key: kioskKey }),
      answers: [
        { answer: 'fill', label: words()('kiosk-fill') },
        { answer: 'leave', label: words()('box-cancel') },
      ],
      otherwise: 'leave',
    });
    if (answer === 'fill' && !shown.window.isDestroyed()) setKiosk(windows, shown, true);
  };
  const put = (): void => {
    const template = menuTemplate(
      words(),
      {
        openDesk: () => void openDesk(),
        print: () => void print(),
        loadAnew: () => windows.inFront?.window.webContents.reload(),
        fillScreen: () => void fillScreen(),
        openLink: ({ address }) => void openLink(windows, words(), address).catch(() => undefined),
        showAbout: () => say(`SRL Bench ${app.getVersion()}`, words()('about-detail')),
        end: () => void ending.ask(),
      },
      process.platform,
    );
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  };
  windows.onOpen(({ window }) => window.on('focus', put));
  put();
  return put;
};
