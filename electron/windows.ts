/** The windows of the shell, one of each kind: how they come up, and what is known of each. */
import { BrowserWindow, type BrowserWindowConstructorOptions, screen, type WebContents } from 'electron';
import type { Language } from '../src/domain/message.ts';
import { pageAddress } from './channel.ts';
import { leastSize, placeOf } from './window-place.ts';
import type { WindowKind, WindowState, WindowStates } from './window-state.ts';

export interface ShellWindow {
  readonly kind: WindowKind;
  readonly window: BrowserWindow;
  /** As its page says it; until then that of the PC. */
  language: Language;
  /** It fills the screen, and neither closes nor gets out of the way by accident. */
  isKiosk: boolean;
  /** Its page broke down and was loaded anew, and the person has not been told yet. */
  wasRecovered: boolean;
}

export interface WindowsOptions {
  readonly preload: string;
  readonly icon: string;
  readonly states: WindowStates;
  readonly language: Language;
  /** Only an unpackaged program is looked into. */
  readonly hasDeveloperTools: boolean;
}

const addressOf: Readonly<Record<WindowKind, string>> = {
  bench: pageAddress,
  desk: `${pageAddress}#/desk`,
};

type Listener = (window: ShellWindow) => void;

export class ShellWindows {
  readonly #options: WindowsOptions;
  readonly #onOpen: Listener[] = [];
  #open: readonly ShellWindow[] = [];

  constructor(options: WindowsOptions) {
    this.#options = options;
  }

  /** Told of every window before its page is loaded. */
  onOpen(listener: Listener): void {
    this.#onOpen.push(listener);
  }

  get all(): readonly ShellWindow[] {
    return this.#open;
  }

  of(contents: WebContents): ShellWindow | undefined {
    return this.#open.find(({ window }) => window.webContents === contents);
  }

  /** The one that a person works in; the first where none has the focus. */
  get inFront(): ShellWindow | undefined {
    const focused = BrowserWindow.getFocusedWindow();
    return this.#open.find(({ window }) => window === focused) ?? this.#open[0];
  }

  bringToFront(shown: ShellWindow | undefined = this.inFront): void {
    if (shown?.window.isMinimized()) shown.window.restore();
    shown?.window.show();
    shown?.window.focus();
  }

  /** Brings the window of that kind to the front where it is open; resolves when its page has come up. */
  async open(kind: WindowKind): Promise<ShellWindow> {
    const known = this.#open.find((each) => each.kind === kind);
    if (known !== undefined) {
      this.bringToFront(known);
      return known;
    }
    const state = this.#options.states.of(kind);
    const window = new BrowserWindow(windowOptions(this.#options, state));
    const { language } = this.#options;
    const opened: ShellWindow = { kind, window, language, isKiosk: false, wasRecovered: false };
    this.#open = [...this.#open, opened];
    window.once('closed', () => {
      this.#open = this.#open.filter((each) => each !== opened);
    });
    if (state?.isMaximised === true) window.maximize();
    for (const listener of this.#onOpen) listener(opened);
    window.once('ready-to-show', () => window.show());
    await window.loadURL(addressOf[kind]);
    this.#remember(opened);
    return opened;
  }

  /** Writes down at once what is to be remembered of a window. */
  noteState({ kind, window, isKiosk }: ShellWindow): void {
    if (window.isDestroyed()) return;
    const { x, y, width, height } = window.getNormalBounds();
    this.#options.states.set(kind, {
      bounds: { x, y, width, height },
      isMaximised: window.isMaximized(),
      isKiosk,
    });
  }

  /** From now on; what a window does of itself while it comes up is not the wish of a person. */
  #remember(opened: ShellWindow): void {
    const note = (): void => this.noteState(opened);
    const { window } = opened;
    window.on('resize', note);
    window.on('move', note);
    window.on('maximize', note);
    window.on('unmaximize', note);
    window.on('close', note);
  }
}

export const windowOptions = (
  { preload, icon, hasDeveloperTools }: WindowsOptions,
  state: WindowState | undefined,
): BrowserWindowConstructorOptions => {
  const primary = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter(({ id }) => id !== primary.id);
  return {
    ...placeOf(
      state?.bounds,
      [primary, ...others].map(({ workArea }) => workArea),
    ),
    minWidth: leastSize.width,
    minHeight: leastSize.height,
    title: 'SRL Bench',
    icon,
    show: false,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: hasDeveloperTools,
    },
  };
};
