/** Brings a window back whose page broke down or hangs: loaded anew where it was, so that a walk goes on with every answer. */
import { app } from 'electron';
import type { LoggedEvent } from '../src/host/log-lines.ts';
import type { Words } from '../src/host/words.ts';
import { askInBox } from './box.ts';
import { isOurs, pageAddress } from './channel.ts';
import type { ShellWindow, ShellWindows } from './windows.ts';

export interface RecoveryOptions {
  readonly windows: ShellWindows;
  readonly words: () => Words;
  readonly log: (event: LoggedEvent) => void;
  /** The program is to end, for the window does not come back. */
  readonly onGivenUp: () => void;
  /** How long a page may hang before it is loaded anew although nobody asked for it. */
  readonly hangMs?: number;
}

/** A window that breaks down more often than this within the time would go on doing so. */
const mostTimes = 3;
const withinMs = 300_000;
const usualHangMs = 20_000;

/** To be called before the first window. */
export const watchBreakdowns = (options: RecoveryOptions): void => {
  app.on('child-process-gone', (_event, { reason, exitCode }) =>
    options.log({ event: 'helper-gone', why: reason, exitCode }),
  );
  options.windows.onOpen((shown) => {
    watchCrashes(shown, options);
    watchHangs(shown, options);
  });
};

const watchCrashes = (shown: ShellWindow, options: RecoveryOptions): void => {
  const { window } = shown;
  const { log } = options;
  let times: readonly number[] = [];

  const comeBack = async (): Promise<void> => {
    const now = performance.now();
    times = [...times.filter((at) => now - at < withinMs), now];
    if (times.length > mostTimes) {
      log({ event: 'window-given-up' });
      if (!(await isToBeTriedAgain(options))) return options.onGivenUp();
      times = [];
    }
    if (window.isDestroyed()) return;
    const address = window.webContents.getURL();
    shown.wasRecovered = true;
    log({ event: 'window-loaded-anew' });
    await window.loadURL(isOurs(address) ? address : pageAddress);
  };
  window.webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    log({ event: 'window-gone', why: reason, exitCode });
    /** Breaking down once more while it loads is told as another breakdown. */
    if (reason !== 'clean-exit') comeBack().catch(() => undefined);
  });
};

const isToBeTriedAgain = async ({ windows, words: current }: RecoveryOptions): Promise<boolean> => {
  const words = current();
  const answer = await askInBox<'again' | 'end'>(windows, {
    type: 'error',
    message: words('window-keeps-failing'),
    detail: words('window-keeps-failing-detail'),
    answers: [
      { answer: 'again', label: words('window-again') },
      { answer: 'end', label: words('window-end') },
    ],
    otherwise: 'end',
  });
  return answer === 'again';
};

/** Ending the process of the page is what brings it back: that it is gone is seen above. */
const watchHangs = (
  shown: ShellWindow,
  { windows, words, log, hangMs = usualHangMs }: RecoveryOptions,
): void => {
  const { window } = shown;
  let waiting: AbortController | undefined;
  const stopWaiting = (): void => {
    waiting?.abort();
    waiting = undefined;
  };
  const ask = async (): Promise<void> => {
    if (waiting !== undefined) return;
    const away = new AbortController();
    waiting = away;
    log({ event: 'window-hangs' });
    const timer = setTimeout(loadAnew, hangMs);
    away.signal.addEventListener('abort', () => clearTimeout(timer));
    const say = words();
    const answer = await askInBox<'wait' | 'anew'>(windows, {
      type: 'warning',
      message: say('window-hangs'),
      detail: say('window-hangs-detail', { seconds: Math.round(hangMs / 1000) }),
      answers: [
        { answer: 'wait', label: say('window-wait') },
        { answer: 'anew', label: say('window-anew') },
      ],
      otherwise: 'wait',
      signal: away.signal,
    });
    if (away.signal.aborted) return;
    stopWaiting();
    if (answer === 'anew') loadAnew();
  };
  const loadAnew = (): void => {
    stopWaiting();
    if (!window.isDestroyed()) window.webContents.forcefullyCrashRenderer();
  };
  window.on('unresponsive', () => void ask());
  window.on('responsive', stopWaiting);
  window.on('closed', stopWaiting);
};
