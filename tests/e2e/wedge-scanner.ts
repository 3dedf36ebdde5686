/** A keyboard-wedge scanner: key events by the clock of the events themselves, as fast or slow as it is set. */
import type { CDPSession, Page } from 'playwright-core';
import { type LayoutName, typedKeys } from '../support/keyboards.ts';
import { dispatchKey, type KeyStroke } from './dispatch-key.ts';

export interface ScannerSetting {
  /** Milliseconds from one character to the next; 5 unless said otherwise (common practice, no source). */
  readonly gapMs?: number;
  readonly end?: 'Enter' | 'Tab' | 'none';
  readonly prefix?: string;
  readonly suffix?: string;
  /** The layout that the scanner types for, and that of the computer; without them the keys have no places. */
  readonly layout?: LayoutName;
  readonly computer?: LayoutName;
}

/** Modifier bits of `Input.dispatchKeyEvent` (Chrome DevTools Protocol). */
const control = 2;
const shiftBit = 8;

/** The separators as scanners send them, by caret notation of ASCII. */
const separatorKeys: Readonly<Record<string, KeyStroke>> = {
  '\u0004': { key: 'd', code: 'KeyD', modifiers: control },
  '\u001d': { key: ']', code: 'BracketRight', modifiers: control },
  '\u001e': { key: '^', code: 'Digit6', modifiers: control | shiftBit },
};

const endKeys = {
  Enter: { key: 'Enter', code: 'Enter', text: '\r', modifiers: 0 },
  Tab: { key: 'Tab', code: 'Tab', modifiers: 0, windowsVirtualKeyCode: 9 },
} as const;

export class WedgeScanner {
  readonly #page: Page;
  readonly #session: CDPSession;
  #clock = 0;

  constructor(page: Page, session: CDPSession) {
    this.#page = page;
    this.#session = session;
  }

  /** Resolves when what was scanned has been answered: no call to the station is under way any more. */
  async scan(code: string, setting: ScannerSetting = {}): Promise<void> {
    await this.type(code, setting);
    await this.settle();
  }

  /**
   * Types a code and its end, and does not wait for what comes of it. All keys are on their way at once: between two of them a
   * busy machine must not put the time that the page takes for the end of a person's typing.
   */
  async type(code: string, setting: ScannerSetting = {}): Promise<void> {
    const { gapMs = 5, end = 'Enter', prefix = '', suffix = '' } = setting;
    this.#clock = Math.max(this.#clock + 200, Date.now());
    const keys = [...`${prefix}${code}${suffix}`].map((character) => keyOf(character, setting));
    if (end !== 'none') keys.push(endKeys[end]);
    await Promise.all(keys.map((key) => this.press(key, gapMs)));
  }

  /** Keys of a person, one every so many milliseconds. */
  async typeAsPerson(text: string, gapMs: number): Promise<void> {
    for (const character of text) await this.press(keyOf(character, {}), gapMs);
  }

  async press(stroke: KeyStroke, afterMs: number): Promise<void> {
    this.#clock += afterMs;
    await dispatchKey(this.#session, stroke, this.#clock);
  }

  async settle(): Promise<void> {
    await this.#page.waitForLoadState('networkidle');
    await this.#page.waitForTimeout(60);
  }
}

const keyOf = (character: string, { layout, computer = 'us' }: ScannerSetting): KeyStroke => {
  const separator = separatorKeys[character];
  if (separator !== undefined) return separator;
  if (layout === undefined) return { key: character, code: '', text: character, modifiers: 0 };
  const [typed] = typedKeys(character, { scanner: layout, computer });
  const { key, code, shift } = typed!;
  const modifiers = shift ? shiftBit : 0;
  return key === 'Dead' ? { key, code, modifiers } : { key, code, text: key, modifiers };
};
