/** A person at the keyboard: key after key, as slowly as people type by the clock of the key events. */
import type { CDPSession, Page } from 'playwright-core';
import { dispatchKey } from './dispatch-key.ts';

/** Milliseconds between two keys of somebody who types fast (common practice, no source); a scanner's are far closer. */
const keyMs = 80;

/** Keys that write nothing, with the code that a browser knows them by (`KeyboardEvent.keyCode`, UI Events). */
const controlKeys: Readonly<Record<string, { readonly code: number; readonly text?: string }>> = {
  Tab: { code: 9 },
  Enter: { code: 13, text: '\r' },
  Escape: { code: 27 },
  Backspace: { code: 8 },
  ArrowUp: { code: 38 },
  ArrowDown: { code: 40 },
  ArrowLeft: { code: 37 },
  ArrowRight: { code: 39 },
};

export class Keyboard {
  readonly #page: Page;
  readonly #session: CDPSession;
  #clock = 0;

  constructor(page: Page, session: CDPSession) {
    this.#page = page;
    this.#session = session;
  }

  /** One key: a character, or a name of `KeyboardEvent.key`. */
  async press(key: string, modifier?: 'Shift'): Promise<void> {
    this.#clock = Math.max(this.#clock + keyMs, Date.now());
    const control = controlKeys[key];
    const text = control === undefined ? key : control.text;
    await dispatchKey(
      this.#session,
      {
        key,
        ...(text === undefined ? {} : { text }),
        modifiers: modifier === 'Shift' ? 8 : 0,
        ...(control === undefined ? {} : { windowsVirtualKeyCode: control.code, code: key }),
      },
      this.#clock,
    );
  }

  async type(text: string): Promise<void> {
    for (const character of text) await this.press(character);
  }

  /** A key that the window waits for a moment with, lest it be the first of a scan. */
  async shortcut(key: string): Promise<void> {
    await this.press(key);
    await this.#page.waitForTimeout(220);
  }

  /** What has the focus, by role and name. */
  focused(): Promise<string> {
    return this.#page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement) || element === document.body) return 'nothing';
      const labels = 'labels' in element ? [...((element.labels ?? []) as NodeListOf<HTMLLabelElement>)] : [];
      const labelledBy = element.getAttribute('aria-labelledby')?.split(' ') ?? [];
      const names = [
        element.getAttribute('aria-label'),
        ...labelledBy.map((id) => document.getElementById(id)?.textContent),
        ...labels.map((label) => label.textContent),
        element.textContent,
      ];
      const name = names.find((each) => each !== null && each !== undefined && each.trim() !== '') ?? '';
      return `${element.getAttribute('role') ?? element.localName}: ${name.replaceAll(/\s+/g, ' ').trim()}`;
    });
  }

  /** Presses Tab until this has the focus. Fails where that takes more than `most` keys. */
  async tabTo(name: RegExp, direction: 'on' | 'back' = 'on', most = 40): Promise<void> {
    const passed: string[] = [];
    for (let keys = 0; keys < most; keys += 1) {
      await this.press('Tab', direction === 'back' ? 'Shift' : undefined);
      const focused = await this.focused();
      if (name.test(focused)) return;
      passed.push(focused);
    }
    throw new Error(`Tab does not lead to ${String(name)}, but to ${passed.join(' | ')}.`);
  }

  /** Everything that Tab leads to from the top of the page, in its order. The page is loaded anew for it. */
  async focusOrder(): Promise<readonly string[]> {
    await this.#page.reload();
    await this.#page.getByRole('main').getByRole('heading', { level: 1 }).waitFor();
    const order: string[] = [];
    for (let keys = 0; keys < 80; keys += 1) {
      await this.press('Tab');
      const focused = await this.focused();
      const isAround = focused === 'nothing' || focused === order[0];
      if (!isAround) order.push(focused);
      else if (order.length > 0) return order;
    }
    throw new Error(`Tab never comes to an end: ${order.join(' | ')}.`);
  }
}
