/** What a test gives to the stand-in and sees of it. */
import { EventEmitter } from 'node:events';
import type {
  IpcMain,
  MenuItemConstructorOptions,
  MessageBoxOptions,
  MessageBoxReturnValue,
  Protocol,
  Rectangle,
  Session,
  WebContentsPrintOptions,
  WebRequest,
} from 'electron';
import type { BrowserContext } from 'playwright-core';
import type { StandInWindow } from './window.ts';

export type InvokeHandler = Parameters<IpcMain['handle']>[1];
export type SchemeHandler = Parameters<Protocol['handle']>[1];

/** A box that stands on the screen until somebody answers it or its signal takes it away. */
export class StandInBox {
  readonly options: MessageBoxOptions;
  readonly answered: Promise<MessageBoxReturnValue>;
  isOpen = true;
  #answer: (response: number) => void = () => undefined;

  constructor(options: MessageBoxOptions) {
    this.options = options;
    this.answered = new Promise((resolve) => {
      this.#answer = (response) => {
        this.isOpen = false;
        resolve({ response, checkboxChecked: false });
      };
    });
    options.signal?.addEventListener('abort', () => this.#answer(options.cancelId ?? 0));
  }

  /** As a person presses the button with these words. */
  choose(label: string): void {
    const response = this.options.buttons?.indexOf(label) ?? -1;
    if (response < 0) throw new Error(`There is no “${label}” in ${this.options.buttons?.join(', ')}.`);
    this.#answer(response);
  }
}

export interface StandInPrint {
  readonly options: WebContentsPrintOptions | undefined;
  readonly answer: (success: boolean, failureReason: string) => void;
}

export class StandIn {
  context: BrowserContext | undefined;
  /** The bundle that the window's preload is read from, whatever path the window names. */
  preloadSource = '';
  isFirstInstance = true;
  isPackaged = false;
  onBattery = false;
  /** The displays of the PC, the first display first. */
  displays: readonly Rectangle[] = [{ x: 0, y: 0, width: 1920, height: 1040 }];
  /** What was asked of Electron before a window, in order. */
  readonly happened: string[] = [];
  readonly windows: StandInWindow[] = [];
  focused: StandInWindow | undefined;
  readonly handlers = new Map<string, InvokeHandler>();
  readonly schemes = new Map<string, SchemeHandler>();
  readonly errorBoxes: { readonly title: string; readonly content: string }[] = [];
  readonly boxes: StandInBox[] = [];
  readonly prints: StandInPrint[] = [];
  readonly openedPaths: string[] = [];
  readonly openedAddresses: string[] = [];
  readonly blockers = new Set<number>();
  blockersStarted = 0;
  menu: readonly MenuItemConstructorOptions[] = [];
  readonly session: {
    permission?: Parameters<Session['setPermissionRequestHandler']>[0];
    permissionCheck?: Parameters<Session['setPermissionCheckHandler']>[0];
    devicePermission?: Parameters<Session['setDevicePermissionHandler']>[0];
    bluetoothPairing?: Parameters<Session['setBluetoothPairingHandler']>[0];
    displayMedia?: Parameters<Session['setDisplayMediaRequestHandler']>[0];
    beforeRequest?: Parameters<WebRequest['onBeforeRequest']>[0];
  } = {};
  exitCode: number | undefined;

  /** The box that stands on the screen now. */
  get openBox(): StandInBox | undefined {
    return this.boxes.find(({ isOpen }) => isOpen);
  }

  /** Presses an entry of the menu. */
  choose(label: string): void {
    const item = itemsIn(this.menu).find((each) => each.label === label);
    if (item?.click === undefined) throw new Error(`There is no “${label}” in the menu.`);
    item.click({} as never, undefined, {} as never);
  }
}

/** Every entry, those of the menus within included. */
export const itemsIn = (
  items: readonly MenuItemConstructorOptions[],
): readonly MenuItemConstructorOptions[] =>
  items.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? itemsIn(item.submenu) : [])]);

export let state = new StandIn();
export const appEvents = new EventEmitter();
export const sessionEvents = new EventEmitter();
export const powerEvents = new EventEmitter();

/** Everything as at the start of a program. */
export const startAfresh = (): StandIn => {
  for (const events of [appEvents, sessionEvents, powerEvents]) events.removeAllListeners();
  state = new StandIn();
  return state;
};

/** An event that a listener may prevent. */
export class PreventableEvent {
  defaultPrevented = false;

  preventDefault(): void {
    this.defaultPrevented = true;
  }
}
