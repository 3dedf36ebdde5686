/** The contents of a window of the stand-in: a page of a real Chromium, with the events that Electron would raise for it. */
import { EventEmitter } from 'node:events';
import type {
  HandlerDetails,
  IpcMainInvokeEvent,
  RenderProcessGoneDetails,
  WebContents,
  WebContentsPrintOptions,
  WebFrameMain,
  WindowOpenHandlerResponse,
} from 'electron';
import type { CDPSession, Download, Frame, Page, Route } from 'playwright-core';
import { asPreload } from './preload.ts';
import { PreventableEvent, sessionEvents, state } from './state.ts';

/**
 * A plain Chromium knows no schemes of ours. A page of `app://srl-bench/` is therefore shown under an https address that
 * exists nowhere, and every address is translated on its way in and out.
 */
const standInOrigin = 'https://srl-bench.invalid/';
const ownOrigin = 'app://srl-bench/';
export const toBrowser = (address: string): string => address.replace(ownOrigin, standInOrigin);
export const fromBrowser = (address: string): string => address.replace(standInOrigin, ownOrigin);

/** What Electron gives to the listener of a navigation. */
class NavigationEvent extends PreventableEvent {
  readonly url: string;
  readonly isMainFrame: boolean;

  constructor(url: string, isMainFrame: boolean) {
    super();
    this.url = url;
    this.isMainFrame = isMainFrame;
  }
}

let lastId = 0;
const nextId = (): number => {
  lastId += 1;
  return lastId;
};

type Told = Pick<
  WebContents,
  'id' | 'setWindowOpenHandler' | 'getURL' | 'send' | 'print' | 'reload' | 'forcefullyCrashRenderer'
>;

/** One process of a window: a page of its own, which another one takes the place of when it has broken down. */
interface Process {
  readonly page: Page;
  readonly inspector: CDPSession;
  readonly processId: number;
}

export class StandInWebContents extends EventEmitter implements Told {
  readonly id = nextId();
  readonly #frames = new Map<Frame, Pick<WebFrameMain, 'url'>>();
  #process: Process | undefined;
  #isGone = true;
  #ownLoad: string | undefined;
  #openHandler: (details: HandlerDetails) => WindowOpenHandlerResponse = () => ({ action: 'allow' });

  setWindowOpenHandler(handler: (details: HandlerDetails) => WindowOpenHandlerResponse): void {
    this.#openHandler = handler;
  }

  get mainFrame(): Pick<WebFrameMain, 'url'> {
    return this.frameOf(this.page.mainFrame());
  }

  get page(): Page {
    if (this.#process === undefined) throw new Error('The window has no page yet.');
    return this.#process.page;
  }

  /** True from the breakdown of a process until the next one has loaded its page. */
  get isGone(): boolean {
    return this.#isGone;
  }

  getURL(): string {
    return this.#process === undefined ? '' : fromBrowser(this.page.url());
  }

  send(channel: string, ...args: readonly unknown[]): void {
    const receive = ([name, given]: readonly [string, readonly unknown[]]): void =>
      (window as unknown as { standInReceive(...args: unknown[]): void }).standInReceive(name, ...given);
    this.page.evaluate(receive, [channel, args] as const).catch(() => undefined);
  }

  print(
    options?: WebContentsPrintOptions,
    callback: (success: boolean, failureReason: string) => void = () => undefined,
  ): void {
    state.prints.push({ options, answer: callback });
  }

  reload(): void {
    void this.page.reload();
  }

  /** The process really ends; the page cannot say that it did. */
  forcefullyCrashRenderer(): void {
    this.#process?.inspector.send('Page.crash').catch(() => undefined);
  }

  /** What Electron does not ask about: a load that the main process itself begins. */
  async load(address: string, hasPreload: boolean): Promise<void> {
    if (this.#isGone) await this.#startProcess(hasPreload);
    this.#ownLoad = address;
    await this.page.goto(toBrowser(address), { waitUntil: 'load' });
    this.#isGone = false;
  }

  async end(): Promise<void> {
    await this.#process?.page.close().catch(() => undefined);
    this.emit('destroyed');
  }

  async #startProcess(hasPreload: boolean): Promise<void> {
    if (state.context === undefined) throw new Error('The stand-in has no browser.');
    const before = this.#process?.page;
    const page = await state.context.newPage();
    await before?.close().catch(() => undefined);
    const inspector = await state.context.newCDPSession(page);
    this.#process = { page, inspector, processId: nextId() };
    page.on('popup', (popup) => void this.#decideOnPopup(popup));
    page.on('crash', () => this.#tellOfCrash());
    page.on('download', (download) => void this.#decideOnDownload(download));
    await page.route('**/*', (route) => this.#decideOnRequest(route));
    await page.exposeBinding('standInInvoke', ({ frame }, channel: string, ...args: unknown[]) =>
      this.#invoke(frame, channel, args),
    );
    if (hasPreload) await page.addInitScript(asPreload(state.preloadSource));
  }

  /** One and the same object for a frame, as in Electron. */
  frameOf(frame: Frame): Pick<WebFrameMain, 'url'> {
    const known = this.#frames.get(frame);
    if (known !== undefined) return known;
    const made = {
      get url() {
        return fromBrowser(frame.url());
      },
    };
    this.#frames.set(frame, made);
    return made;
  }

  #invoke(frame: Frame, channel: string, args: readonly unknown[]): unknown {
    const handler = state.handlers.get(channel);
    if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
    const processId = this.#process?.processId ?? 0;
    const event = { type: 'frame', sender: this, senderFrame: this.frameOf(frame), processId };
    return handler(event as unknown as IpcMainInvokeEvent, ...args);
  }

  #tellOfCrash(): void {
    this.#isGone = true;
    const details: RenderProcessGoneDetails = { reason: 'crashed', exitCode: 5 };
    this.emit('render-process-gone', {}, details);
  }

  async #decideOnRequest(route: Route): Promise<void> {
    const request = route.request();
    const url = fromBrowser(request.url());
    if (request.isNavigationRequest() && !this.#isAllowed(url, request.frame()))
      return route.abort('aborted');
    if (this.#isCanceled(url)) return route.abort('blockedbyclient');
    if (!url.startsWith(ownOrigin)) return route.continue();
    const handler = state.schemes.get('app');
    const response =
      handler === undefined
        ? new Response(null, { status: 404 })
        : await handler(new Request(url, { method: request.method() }));
    return route.fulfill({
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: Buffer.from(await response.arrayBuffer()),
    });
  }

  #isCanceled(url: string): boolean {
    let isCanceled = false;
    const ask = state.session.beforeRequest as
      | ((details: { readonly url: string }, answer: (response: { cancel?: boolean }) => void) => void)
      | undefined;
    ask?.({ url }, ({ cancel }) => {
      isCanceled = cancel === true;
    });
    return isCanceled;
  }

  #isAllowed(url: string, frame: Frame): boolean {
    if (this.#ownLoad === url) {
      this.#ownLoad = undefined;
      return true;
    }
    const event = new NavigationEvent(url, frame === this.page.mainFrame());
    this.emit('will-frame-navigate', event);
    if (event.isMainFrame) this.emit('will-navigate', event);
    this.emit('stand-in-navigation', url, event.defaultPrevented ? 'denied' : 'allowed');
    return !event.defaultPrevented;
  }

  async #decideOnPopup(popup: Page): Promise<void> {
    const url = fromBrowser(popup.url());
    const details: HandlerDetails = {
      url,
      frameName: '',
      features: '',
      disposition: 'new-window',
      referrer: { url: '', policy: 'default' },
    };
    const { action } = this.#openHandler(details);
    this.emit('stand-in-asked-to-open', action);
    if (action === 'deny') await popup.close();
  }

  async #decideOnDownload(download: Download): Promise<void> {
    const event = new PreventableEvent();
    const url = download.url().replace(`blob:${standInOrigin}`, `blob:${ownOrigin}`);
    sessionEvents.emit('will-download', event, { getURL: () => url }, this);
    this.emit('stand-in-download', url, event.defaultPrevented ? 'denied' : 'allowed');
    if (event.defaultPrevented) await download.cancel();
  }
}
