/** A window of the stand-in: its contents are a page of a real Chromium, its frame is told and remembered. */
import { EventEmitter } from 'node:events';
import type { BrowserWindow, BrowserWindowConstructorOptions, Rectangle } from 'electron';
import { appEvents, PreventableEvent, state } from './state.ts';
import { StandInWebContents } from './web-contents.ts';

type Told = Pick<
  BrowserWindow,
  | 'loadURL'
  | 'show'
  | 'focus'
  | 'isMinimized'
  | 'restore'
  | 'maximize'
  | 'isMaximized'
  | 'getNormalBounds'
  | 'isDestroyed'
  | 'setKiosk'
  | 'setMinimizable'
  | 'setMenuBarVisibility'
>;

export class StandInWindow extends EventEmitter implements Told {
  readonly options: BrowserWindowConstructorOptions;
  readonly webContents: StandInWebContents;
  bounds: Rectangle;
  isShown = false;
  isKiosk = false;
  isMinimizable = true;
  hasMenuBar = true;
  focusCount = 0;
  #isMaximised = false;
  #isMinimised = false;
  #isDestroyed = false;

  static getFocusedWindow(): StandInWindow | null {
    return state.focused ?? null;
  }

  constructor(options: BrowserWindowConstructorOptions) {
    super();
    this.options = options;
    const { x = 0, y = 0, width = 800, height = 600 } = options;
    this.bounds = { x, y, width, height };
    this.webContents = new StandInWebContents();
    state.windows.push(this);
    appEvents.emit('web-contents-created', {}, this.webContents);
  }

  async loadURL(address: string): Promise<void> {
    await this.webContents.load(address, this.options.webPreferences?.preload !== undefined);
    this.emit('ready-to-show');
  }

  show(): void {
    this.isShown = true;
  }

  focus(): void {
    this.focusCount += 1;
    state.focused = this;
    this.emit('focus');
  }

  minimise(): void {
    this.#isMinimised = true;
    this.emit('minimize');
  }

  isMinimized(): boolean {
    return this.#isMinimised;
  }

  restore(): void {
    this.#isMinimised = false;
  }

  maximize(): void {
    this.#isMaximised = true;
    this.emit('maximize');
  }

  isMaximized(): boolean {
    return this.#isMaximised;
  }

  /** As a hand moves and draws it. */
  moveTo(bounds: Rectangle): void {
    this.bounds = bounds;
    this.emit('move');
    this.emit('resize');
  }

  getNormalBounds(): Rectangle {
    return this.bounds;
  }

  setKiosk(isKiosk: boolean): void {
    this.isKiosk = isKiosk;
  }

  setMinimizable(isMinimizable: boolean): void {
    this.isMinimizable = isMinimizable;
  }

  setMenuBarVisibility(hasMenuBar: boolean): void {
    this.hasMenuBar = hasMenuBar;
  }

  isDestroyed(): boolean {
    return this.#isDestroyed;
  }

  /** As its cross is pressed: false where that was prevented. */
  async close(): Promise<boolean> {
    const event = new PreventableEvent();
    this.emit('close', event);
    if (event.defaultPrevented) return false;
    await this.destroy();
    return true;
  }

  async destroy(): Promise<void> {
    if (this.#isDestroyed) return;
    this.#isDestroyed = true;
    state.windows.splice(state.windows.indexOf(this), 1);
    if (state.focused === this) state.focused = undefined;
    this.emit('closed');
    await this.webContents.end();
    if (state.windows.length === 0) appEvents.emit('window-all-closed');
  }
}
