/**
 * A stand-in for the `electron` module, as small as `electron/` needs it, whose windows are pages of a real Chromium.
 *
 * It shows what our main process and our preload do. It does not show what Electron itself guarantees: the isolation of
 * worlds, the sandbox of the renderer, the scheme of the page, and that an event comes when its declaration says so.
 */
import type {
  App,
  CustomScheme,
  Dialog,
  Display,
  IpcMain,
  MenuItemConstructorOptions,
  MessageBoxOptions,
  MessageBoxReturnValue,
  PowerMonitor,
  PowerSaveBlocker,
  Protocol,
  Screen,
  Session,
  Shell,
  WebRequest,
} from 'electron';
import {
  appEvents,
  type InvokeHandler,
  PreventableEvent,
  powerEvents,
  type SchemeHandler,
  StandInBox,
  sessionEvents,
  state,
} from './state.ts';

export { StandInWindow as BrowserWindow } from './window.ts';

const appStandIn = {
  setPath: (name: string) => void state.happened.push(`path ${name}`),
  enableSandbox: () => void state.happened.push('sandbox'),
  requestSingleInstanceLock: () => state.isFirstInstance,
  whenReady: () => {
    state.happened.push('ready');
    return Promise.resolve();
  },
  getLocale: () => 'en-GB',
  getVersion: () => '0.0.0',
  get isPackaged() {
    return state.isPackaged;
  },
  quit: () => void quit(),
  exit: (code?: number) => {
    state.exitCode = code ?? 0;
    for (const window of [...state.windows]) void window.destroy();
    appEvents.emit('stand-in-exit');
  },
} satisfies Partial<App>;

const quit = async (): Promise<void> => {
  if (isPrevented('before-quit')) return;
  for (const window of [...state.windows]) if (!(await window.close())) return;
  if (!isPrevented('will-quit')) appStandIn.exit(0);
};

const isPrevented = (name: string): boolean => {
  const event = new PreventableEvent();
  appEvents.emit(name, event);
  return event.defaultPrevented;
};

/** The getter of `isPackaged` must stay one. */
export const app = Object.defineProperties(
  appEvents,
  Object.getOwnPropertyDescriptors(appStandIn),
) as typeof appEvents & typeof appStandIn;

export const exited = (): Promise<number> =>
  new Promise((resolve) => {
    if (state.exitCode !== undefined) resolve(state.exitCode);
    else appEvents.once('stand-in-exit', () => resolve(state.exitCode ?? -1));
  });

export const ipcMain = {
  handle: (channel: string, handler: InvokeHandler) => void state.handlers.set(channel, handler),
} satisfies Partial<IpcMain>;

export const protocol = {
  registerSchemesAsPrivileged: (schemes: CustomScheme[]) =>
    void state.happened.push(...schemes.map(({ scheme }) => `scheme ${scheme}`)),
  handle: (scheme: string, handler: SchemeHandler) => void state.schemes.set(scheme, handler),
} satisfies Partial<Protocol>;

const sessionStandIn = {
  setPermissionRequestHandler: (handler) => {
    state.session.permission = handler;
  },
  setPermissionCheckHandler: (handler) => {
    state.session.permissionCheck = handler;
  },
  setDevicePermissionHandler: (handler) => {
    state.session.devicePermission = handler;
  },
  setBluetoothPairingHandler: (handler) => {
    state.session.bluetoothPairing = handler;
  },
  setDisplayMediaRequestHandler: (handler) => {
    state.session.displayMedia = handler;
  },
} satisfies Partial<Session>;

const webRequest = {
  onBeforeRequest: (listener: unknown) => {
    state.session.beforeRequest = listener as Parameters<WebRequest['onBeforeRequest']>[0];
  },
} satisfies Partial<WebRequest>;

export const session = { defaultSession: Object.assign(sessionEvents, sessionStandIn, { webRequest }) };

function showMessageBox(options: MessageBoxOptions): Promise<MessageBoxReturnValue>;
function showMessageBox(window: unknown, options: MessageBoxOptions): Promise<MessageBoxReturnValue>;
function showMessageBox(first: unknown, second?: MessageBoxOptions): Promise<MessageBoxReturnValue> {
  const box = new StandInBox(second ?? (first as MessageBoxOptions));
  state.boxes.push(box);
  return box.answered;
}

export const dialog = {
  showErrorBox: (title: string, content: string) => void state.errorBoxes.push({ title, content }),
  showMessageBox,
} satisfies Partial<Dialog>;

export const shell = {
  openPath: (path: string) => {
    state.openedPaths.push(path);
    return Promise.resolve('');
  },
  openExternal: (address: string) => {
    state.openedAddresses.push(address);
    return Promise.resolve();
  },
} satisfies Partial<Shell>;

export const Menu = {
  buildFromTemplate: (template: readonly MenuItemConstructorOptions[]) => ({ template }),
  setApplicationMenu: (menu: { readonly template: readonly MenuItemConstructorOptions[] }): void => {
    state.menu = menu.template;
  },
};

const displayOf = (workArea: Display['workArea'], index: number): Display =>
  ({ id: index + 1, workArea }) satisfies Partial<Display> as Display;

export const screen = {
  getPrimaryDisplay: () => displayOf(state.displays[0]!, 0),
  getAllDisplays: () => state.displays.map(displayOf),
} satisfies Partial<Screen>;

const powerStandIn = {
  get onBatteryPower() {
    return state.onBattery;
  },
} satisfies Partial<PowerMonitor>;

export const powerMonitor = Object.defineProperties(
  powerEvents,
  Object.getOwnPropertyDescriptors(powerStandIn),
) as typeof powerEvents & typeof powerStandIn;

export const powerSaveBlocker = {
  start: () => {
    state.blockersStarted += 1;
    state.blockers.add(state.blockersStarted);
    return state.blockersStarted;
  },
  stop: (id: number) => state.blockers.delete(id),
} satisfies Partial<PowerSaveBlocker>;
