/**
 * A stand-in for the `electron` module, as small as `electron/` needs it, whose windows are pages of a real Chromium.
 *
 * It shows what our main process and our preload do. It does not show what Electron itself guarantees: the isolation of
 * worlds, the sandbox of the renderer, and the scheme of the page.
 */
import { EventEmitter } from 'node:events';
import type {
  App,
  BrowserWindowConstructorOptions,
  CustomScheme,
  Dialog,
  IpcMain,
  IpcMainInvokeEvent,
  Protocol,
  Session,
  Shell,
} from 'electron';
import type { BrowserContext } from 'playwright-core';
import { StandInWebContents } from './web-contents.ts';

type InvokeHandler = Parameters<IpcMain['handle']>[1];
type SchemeHandler = Parameters<Protocol['handle']>[1];

/** What a test gives to the stand-in and sees of it. */
export class StandIn {
  context: BrowserContext | undefined;
  /** The bundle that the window's preload is read from, whatever path the window names. */
  preloadSource = '';
  isFirstInstance = true;
  /** What a page may send is checked by what it asked Electron for, in order. */
  readonly happened: string[] = [];
  readonly windows: StandInWindow[] = [];
  readonly handlers = new Map<string, InvokeHandler>();
  readonly schemes = new Map<string, SchemeHandler>();
  readonly errorBoxes: { readonly title: string; readonly content: string }[] = [];
  readonly openedPaths: string[] = [];
  permission: Parameters<Session['setPermissionRequestHandler']>[0] = null;
  permissionCheck: Parameters<Session['setPermissionCheckHandler']>[0] = null;
  exitCode: number | undefined;
}

let state = new StandIn();
const appEvents = new EventEmitter();

/** Everything as at the start of a program. */
export const startAfresh = (): StandIn => {
  appEvents.removeAllListeners();
  state = new StandIn();
  return state;
};

const appStandIn = {
  setPath: (name: string) => void state.happened.push(`path ${name}`),
  enableSandbox: () => void state.happened.push('sandbox'),
  requestSingleInstanceLock: () => state.isFirstInstance,
  whenReady: () => {
    state.happened.push('ready');
    return Promise.resolve();
  },
  getLocale: () => 'en-GB',
  quit: () => {
    let prevented = false;
    appEvents.emit('will-quit', { preventDefault: () => (prevented = true) });
    if (!prevented) appStandIn.exit(0);
  },
  exit: (code?: number) => {
    state.exitCode = code ?? 0;
    appEvents.emit('stand-in-exit');
  },
} satisfies Partial<App>;

export const app = Object.assign(appEvents, appStandIn);

export const exited = (): Promise<number> =>
  new Promise((resolve) => {
    if (state.exitCode !== undefined) resolve(state.exitCode);
    else appEvents.once('stand-in-exit', () => resolve(state.exitCode ?? -1));
  });

class StandInWindow extends EventEmitter {
  readonly options: BrowserWindowConstructorOptions;
  readonly webContents = new StandInWebContents();
  isShown = false;
  focusCount = 0;

  static getAllWindows(): readonly StandInWindow[] {
    return state.windows;
  }

  constructor(options: BrowserWindowConstructorOptions) {
    super();
    this.options = options;
    state.windows.push(this);
    appEvents.emit('web-contents-created', {}, this.webContents);
  }

  async loadURL(address: string): Promise<void> {
    if (state.context === undefined) throw new Error('The stand-in has no browser.');
    const page = await state.context.newPage();
    await this.webContents.attach(page, (request) => answerOwn(request));
    await page.exposeBinding('standInInvoke', ({ frame }, channel: string, ...args: unknown[]) =>
      invoke(this.webContents, frame, channel, args),
    );
    if (this.options.webPreferences?.preload) await page.addInitScript(asPreload(state.preloadSource));
    await this.webContents.load(address);
    this.emit('ready-to-show');
  }

  show(): void {
    this.isShown = true;
  }

  focus(): void {
    this.focusCount += 1;
  }

  isMinimized(): boolean {
    return false;
  }

  restore(): void {}

  async close(): Promise<void> {
    await this.webContents.page.close();
    state.windows.splice(state.windows.indexOf(this), 1);
    if (state.windows.length === 0) appEvents.emit('window-all-closed');
  }
}

export { StandInWindow as BrowserWindow };

const answerOwn = async (request: Request): Promise<Response> => {
  const handler = state.schemes.get('app');
  return handler === undefined ? new Response(null, { status: 404 }) : handler(request);
};

const invoke = (
  sender: StandInWebContents,
  frame: Parameters<StandInWebContents['frameOf']>[0],
  channel: string,
  args: readonly unknown[],
): unknown => {
  const handler = state.handlers.get(channel);
  if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
  const event = { type: 'frame', sender, senderFrame: sender.frameOf(frame) };
  return handler(event as unknown as IpcMainInvokeEvent, ...args);
};

/** As Electron runs a preload: in the top frame alone, before the page, with nothing to require but `electron`. */
const asPreload = (bundle: string): string => `
  if (window === window.top) {
    const electron = {
      contextBridge: { exposeInMainWorld: (name, api) => { window[name] = Object.freeze(api); } },
      ipcRenderer: { invoke: (channel, ...args) => window.standInInvoke(channel, ...args) },
    };
    const require = (name) => {
      if (name !== 'electron') throw new Error('A sandboxed preload cannot require ' + name);
      return electron;
    };
    ((require, exports, module) => {${bundle}})(require, {}, { exports: {} });
  }
`;

export const ipcMain = {
  handle: (channel: string, handler: InvokeHandler) => void state.handlers.set(channel, handler),
} satisfies Partial<IpcMain>;

export const protocol = {
  registerSchemesAsPrivileged: (schemes: CustomScheme[]) =>
    void state.happened.push(...schemes.map(({ scheme }) => `scheme ${scheme}`)),
  handle: (scheme: string, handler: SchemeHandler) => void state.schemes.set(scheme, handler),
} satisfies Partial<Protocol>;

export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler) => {
      state.permission = handler;
    },
    setPermissionCheckHandler: (handler) => {
      state.permissionCheck = handler;
    },
  } satisfies Partial<Session>,
};

export const dialog = {
  showErrorBox: (title: string, content: string) => void state.errorBoxes.push({ title, content }),
} satisfies Partial<Dialog>;

export const shell = {
  openPath: (path: string) => {
    state.openedPaths.push(path);
    return Promise.resolve('');
  },
} satisfies Partial<Shell>;

export const Menu = { setApplicationMenu: (): void => undefined };
