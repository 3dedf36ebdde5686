/** One window of the soak: its page calls the station, and is reloaded, closed and crashed under way. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import type { SoakedStation } from './soaked-station.ts';

export interface AskedCall<Name extends OperationName = OperationName> {
  readonly operation: Name;
  readonly input: InputOf<Name>;
}

export const ask = <Name extends OperationName>(operation: Name, input: InputOf<Name>): AskedCall<Name> => ({
  operation,
  input,
});

/** What the page came to between two looks at it. */
export interface PageHeld {
  readonly heapMb: number;
  readonly nodes: number;
  readonly listeners: number;
}

export interface PageSample extends PageHeld {
  /** The page that was looked at, one number for each time that it was loaded. */
  readonly load: number;
  /** Operations that this page had called by then. */
  readonly age: number;
}

type Answered =
  | { readonly ok: true; readonly output: unknown }
  | { readonly ok: false; readonly code: string };

/** A call that the station refused. */
export class Refused extends Error {
  readonly code: string;
  constructor(operation: string, code: string) {
    super(`${operation} was refused: ${code}`);
    this.code = code;
  }
}

export class SoakWindow {
  readonly #browser: Browser;
  readonly #station: SoakedStation;
  readonly #badge: string;
  readonly #screens: readonly string[];
  readonly #faults: string[] = [];
  readonly samples: PageSample[] = [];
  #context: BrowserContext | undefined;
  #page: Page | undefined;
  #load = 0;
  #age = 0;
  #operations = 0;
  #expectsErrors = false;

  /** `screens`: where somebody goes in this window. */
  constructor(
    browser: Browser,
    station: SoakedStation,
    { badge, screens }: { readonly badge: string; readonly screens: readonly string[] },
  ) {
    this.#browser = browser;
    this.#station = station;
    this.#badge = badge;
    this.#screens = screens;
  }

  get operations(): number {
    return this.#operations;
  }

  get faults(): readonly string[] {
    return this.#faults;
  }

  get loads(): number {
    return this.#load;
  }

  /** A window of its own, which comes in by a new address, and somebody signs in. */
  async open(): Promise<void> {
    this.#context = await this.#browser.newContext({
      viewport: { width: 1366, height: 768 },
      locale: 'en-GB',
    });
    await this.#newPage(await this.#station.newAddress());
    await this.#loaded();
    await this.callAll(ask('session.sign-in', { badge: this.#badge }));
  }

  async close(): Promise<void> {
    this.#expectsErrors = true;
    await this.#context?.close();
    this.#context = undefined;
    this.#page = undefined;
  }

  async reload(): Promise<void> {
    this.#expectsErrors = true;
    await this.#onPage.reload();
    await this.#loaded();
  }

  /** The process of the page ends in the middle of everything; a new page takes its place, with the same cookie. */
  async crash(): Promise<void> {
    this.#expectsErrors = true;
    const page = this.#onPage;
    const origin = new URL(page.url()).origin;
    const crashed = page.waitForEvent('crash');
    await page.goto('chrome://crash').catch(() => undefined);
    await crashed;
    await page.close();
    await this.#newPage(`${origin}/`);
    await this.#loaded();
  }

  /** Somebody is there: a window that nobody touches is locked. */
  async touch(): Promise<void> {
    await this.#onPage.keyboard.press('Shift');
  }

  /** Goes to a screen, as somebody at the window would. */
  async look(hash: string): Promise<void> {
    await this.#onPage.evaluate(async (next) => {
      window.location.hash = next;
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 60)));
    }, hash);
  }

  /** Calls one after another from the page; the outputs. Throws `Refused` at the first that is refused. */
  async callAll<Calls extends readonly AskedCall[]>(
    ...calls: Calls
  ): Promise<{ [Index in keyof Calls]: OutputOf<Calls[Index]['operation']> }> {
    const answers = await this.#onPage.evaluate(callFromPage, calls as readonly AskedCall[]);
    this.#operations += answers.length;
    this.#age += answers.length;
    const last = answers.at(-1);
    if (last !== undefined && !last.ok)
      throw new Refused(calls[answers.length - 1]?.operation ?? '', last.code);
    return answers.map((answer) => (answer.ok ? answer.output : undefined)) as never;
  }

  /** Begins calls and does not wait for them: what comes next falls into the middle of them. */
  leaveUnderWay(calls: readonly AskedCall[]): void {
    this.#onPage.evaluate(callFromPage, calls).catch(() => undefined);
  }

  async signInAgain(): Promise<void> {
    await this.callAll(ask('session.sign-in', { badge: this.#badge }));
  }

  async lookAtEveryScreen(): Promise<void> {
    for (const hash of this.#screens) await this.look(hash);
  }

  /** On the start screen, after everything that can be collected was. */
  async sample(): Promise<PageSample> {
    const page = this.#onPage;
    await this.look('#/');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor();
    await page.waitForTimeout(300);
    const session = await page.context().newCDPSession(page);
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters');
    await session.detach();
    const sample = {
      load: this.#load,
      age: this.#age,
      heapMb: usedSize / 1e6,
      nodes,
      listeners: jsEventListeners,
    };
    this.samples.push(sample);
    return sample;
  }

  get #onPage(): Page {
    if (this.#page === undefined) throw new Error('The window is closed.');
    return this.#page;
  }

  async #newPage(address: string): Promise<void> {
    if (this.#context === undefined) throw new Error('The window is closed.');
    const page = await this.#context.newPage();
    page.on('pageerror', (error) => this.#faults.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' && !this.#expectsErrors) this.#faults.push(message.text());
    });
    this.#page = page;
    await page.goto(address);
  }

  async #loaded(): Promise<void> {
    await this.#onPage.getByRole('banner').getByRole('textbox').waitFor();
    this.#expectsErrors = false;
    this.#load += 1;
    this.#age = 0;
  }
}

const callFromPage = async (calls: readonly AskedCall[]): Promise<readonly Answered[]> => {
  const answers: Answered[] = [];
  for (const call of calls) {
    const response = await fetch('/call', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ ...call, language: 'en' }),
    });
    const answer = await response.json();
    answers.push(answer.ok ? answer : { ok: false, code: answer.error.code });
    if (!answer.ok) break;
  }
  return answers;
};
