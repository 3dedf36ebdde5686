/** What happens to the PC: it sleeps, it is locked, it goes on by its battery, it is shut down. */
import { powerMonitor, powerSaveBlocker } from 'electron';
import type { LoggedEvent } from '../src/host/log-lines.ts';
import type { ShellNews } from '../src/station/shell-bridge.ts';
import type { Station } from '../src/station/station.ts';
import type { Begun } from '../src/station/under-way.ts';
import { newsChannel } from './channel.ts';
import type { ShellWindows } from './windows.ts';

export interface PowerOptions {
  readonly station: Pick<Station, 'lockSessions'>;
  readonly windows: ShellWindows;
  readonly log: (event: LoggedEvent) => void;
  /** Does what is due on a day, which may be another one now. */
  readonly keep: () => void;
  /** The system ends. */
  readonly onShutdown: () => void;
}

/** A print that goes on while the PC sleeps is given out only where its printer says so afterwards; that is the station's. */
export const watchPower = ({ station, windows, log, keep, onShutdown }: PowerOptions): void => {
  const tell = (news: ShellNews): void => {
    for (const { window } of windows.all) window.webContents.send(newsChannel, news);
  };
  const lock = (event: 'suspended' | 'screen-locked'): void => {
    log({ event });
    station.lockSessions();
    tell({ news: 'look-again' });
  };
  const comeBack = (): void => {
    log({ event: 'resumed' });
    tell({ news: 'look-again' });
    keep();
  };
  powerMonitor.on('suspend', () => lock('suspended'));
  powerMonitor.on('lock-screen', () => lock('screen-locked'));
  powerMonitor.on('resume', comeBack);
  powerMonitor.on('unlock-screen', comeBack);
  powerMonitor.on('on-battery', () => {
    log({ event: 'on-battery' });
    tell({ news: 'power', onBattery: true });
  });
  powerMonitor.on('on-ac', () => {
    log({ event: 'on-mains' });
    tell({ news: 'power', onBattery: false });
  });
  powerMonitor.on('shutdown', (...[event]: readonly unknown[]) => {
    if (isPreventable(event)) event.preventDefault();
    log({ event: 'system-ends' });
    onShutdown();
  });
};

/** Electron waits with the shutdown where the event is prevented, though its typings leave the event out. */
const isPreventable = (event: unknown): event is { preventDefault(): void } =>
  typeof event === 'object' &&
  event !== null &&
  'preventDefault' in event &&
  typeof event.preventDefault === 'function';

/** Keeps the PC awake while something is under way, and not for a moment longer; the screen may go dark. */
export const stayAwake = (): ((begun: readonly Begun[]) => void) => {
  let blocker: number | undefined;
  return (begun) => {
    if (begun.length > 0 && blocker === undefined) blocker = powerSaveBlocker.start('prevent-app-suspension');
    if (begun.length === 0 && blocker !== undefined) {
      powerSaveBlocker.stop(blocker);
      blocker = undefined;
    }
  };
};
