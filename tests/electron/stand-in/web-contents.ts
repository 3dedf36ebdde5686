/** The contents of a window of the stand-in: a page of a real Chromium, with the events that Electron would raise for it. */
import { EventEmitter } from 'node:events';
import type { HandlerDetails, WebContents, WebFrameMain, WindowOpenHandlerResponse } from 'electron';
import type { Frame, Page, Route } from 'playwright-core';

/**
 * A plain Chromium knows no schemes of ours. A page of `app://srl-bench/` is therefore shown under an https address that
 * exists nowhere, and every address is translated on its way in and out.
 */
const standInOrigin = 'https://srl-bench.invalid/';
const ownOrigin = 'app://srl-bench/';
export const toBrowser = (address: string): string => address.replace(ownOrigin, standInOrigin);
export const fromBrowser = (address: string): string => address.replace(standInOrigin, ownOrigin);

export type OwnRequest = (request: Request) => Promise<Response>;

/** What Electron gives to the listener of a navigation. */
class NavigationEvent {
  readonly url: string;
  readonly isMainFrame: boolean;
  defaultPrevented = false;

  constructor(url: string, isMainFrame: boolean) {
    this.url = url;
    this.isMainFrame = isMainFrame;
  }

  preventDefault(): void {
    this.defaultPrevented = true;
  }
}

let lastId = 0;
const nextId = (): number => {
  lastId += 1;
  return lastId;
};

export class StandInWebContents
  extends EventEmitter
  implements Pick<WebContents, 'id' | 'setWindowOpenHandler'>
{
  readonly id = nextId();
  readonly #frames = new Map<Frame, Pick<WebFrameMain, 'url'>>();
  #page: Page | undefined;
  #ownLoad: string | undefined;
  #openHandler: (details: HandlerDetails) => WindowOpenHandlerResponse = () => ({ action: 'allow' });

  setWindowOpenHandler(handler: (details: HandlerDetails) => WindowOpenHandlerResponse): void {
    this.#openHandler = handler;
  }

  get mainFrame(): Pick<WebFrameMain, 'url'> {
    return this.frameOf(this.page.mainFrame());
  }

  get page(): Page {
    if (this.#page === undefined) throw new Error('The window has no page yet.');
    return this.#page;
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

  async attach(page: Page, answer: OwnRequest): Promise<void> {
    this.#page = page;
    page.on('popup', (popup) => void this.#decideOnPopup(popup));
    page.on('close', () => this.emit('destroyed'));
    await page.route('**/*', (route) => this.#decideOnRequest(route, answer));
  }

  /** What Electron does not ask about: a load that the main process itself begins. */
  async load(address: string): Promise<void> {
    this.#ownLoad = address;
    await this.page.goto(toBrowser(address), { waitUntil: 'load' });
  }

  async #decideOnRequest(route: Route, answer: OwnRequest): Promise<void> {
    const request = route.request();
    const url = fromBrowser(request.url());
    if (request.isNavigationRequest() && !this.#isAllowed(url, request.frame()))
      return route.abort('aborted');
    if (!url.startsWith(ownOrigin)) return route.continue();
    const response = await answer(new Request(url, { method: request.method() }));
    return route.fulfill({
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: Buffer.from(await response.arrayBuffer()),
    });
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
}
