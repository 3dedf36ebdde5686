/** A whole day at the desk in a real window, by keyboard alone. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { openDesk } from './desk-crew.ts';
import { day, type Hand } from './desk-day.ts';
import { Keyboard } from './keyboard.ts';

const keyboardHand = async (page: Page): Promise<Hand> => {
  const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
  const pressOn = async (name: RegExp): Promise<void> => {
    await keyboard.tabTo(name);
    await keyboard.press('Enter');
  };
  return {
    enter: async (code) => {
      if (!(await keyboard.focused()).startsWith('input: Scan field'))
        await keyboard.tabTo(/^input: Scan field/);
      await keyboard.type(code);
      await keyboard.press('Enter');
    },
    choose: (number) => keyboard.shortcut(String(number)),
    confirm: () => pressOn(/^button: I inspected/),
    goOn: () => pressOn(/^button: Go on/),
    next: async () => {
      await expect.poll(() => keyboard.focused()).toMatch(/^button: (1)?Next/);
      await keyboard.press('Enter');
    },
  };
};

describe.runIf(hasBrowser())('a day at the desk', () => {
  test('goes by keyboard alone, as slowly as people type', async () => {
    const crew = await openDesk();
    await day(crew, await keyboardHand(crew.window.page));
  }, 600_000);
});
