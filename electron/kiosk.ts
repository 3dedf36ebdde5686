/** A window that fills the screen of the bench, and that nobody leaves by accident. */
import type { Input } from 'electron';
import type { ShellWindow, ShellWindows } from './windows.ts';

/** What a hand must strike to leave; no scanner types it, and no screen of ours uses it. */
export const kioskKey = 'Ctrl+Shift+F11';

type Strike = Pick<Input, 'type' | 'key' | 'control' | 'shift' | 'alt' | 'meta' | 'isAutoRepeat'>;

export const isKioskKey = ({ type, key, control, shift, alt, meta, isAutoRepeat }: Strike): boolean =>
  type === 'keyDown' && key === 'F11' && control && shift && !alt && !meta && !isAutoRepeat;

export const setKiosk = (windows: ShellWindows, shown: ShellWindow, isKiosk: boolean): void => {
  shown.isKiosk = isKiosk;
  shown.window.setKiosk(isKiosk);
  shown.window.setMinimizable(!isKiosk);
  shown.window.setMenuBarVisibility(!isKiosk);
  windows.noteState(shown);
};

/** To be called before the first window. */
export const watchKiosk = (windows: ShellWindows): void =>
  windows.onOpen((shown) => {
    const { window } = shown;
    window.webContents.on('before-input-event', (event, input) => {
      if (!shown.isKiosk || !isKioskKey(input)) return;
      event.preventDefault();
      setKiosk(windows, shown, false);
    });
    window.on('minimize', () => {
      if (shown.isKiosk) window.restore();
    });
    window.on('leave-full-screen', () => {
      if (shown.isKiosk) window.setKiosk(true);
    });
  });
