/** Setup → Printers by keyboard alone: added, checked, tried with the test pattern, set straight, changed and taken off. */
import { mkdir, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

/** What is read off the pattern where it sits one millimetre too far to the left and half a millimetre too low. */
const rulers: readonly (readonly [RegExp, string])[] = [
  [/Left edge, mm/, '1'],
  [/Right edge, mm/, '100'],
  [/Top edge, mm/, '0'],
  [/Bottom edge, mm/, '49.5'],
];

describe.runIf(hasBrowser())('the keyboard alone', () => {
  test('adds a printer, checks it, prints its test pattern, sets its offset, changes it and removes it', async () => {
    const { page, folder } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
    const place = join(folder, 'print-folder');
    await mkdir(place);

    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await keyboard.shortcut('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
    await keyboard.tabTo(/^input: Scan field/);
    await keyboard.type(demo.administrator);
    await keyboard.press('Enter');
    await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
    await keyboard.tabTo(/^a: Setup/);
    await keyboard.press('Enter');
    await keyboard.tabTo(/^tab: People/);
    for (let tab = 0; tab < 4; tab += 1) await keyboard.press('ArrowRight');
    await keyboard.tabTo(/^button: Add a printer/);
    await keyboard.press('Enter');
    await expect.poll(() => keyboard.focused()).toBe('input: Folder');
    await keyboard.press('ArrowRight');
    await expect.poll(() => keyboard.focused()).not.toBe('input: Folder');
    await keyboard.press('ArrowLeft');
    await expect.poll(() => keyboard.focused()).toBe('input: Folder');
    await keyboard.tabTo(/^input: Name/);
    await keyboard.type('Hall');
    await keyboard.tabTo(/^input: Folder/);
    await keyboard.type(place);
    await keyboard.tabTo(/^summary: Form of the stock/);
    await keyboard.press('Enter');
    await keyboard.tabTo(/^input: Flat/);
    await keyboard.tabTo(/^button: Check/);
    await keyboard.press('Enter');
    await page.getByText('Ready', { exact: true }).waitFor();
    expect(await keyboard.focused()).toBe('button: Check');
    await keyboard.tabTo(/^button: Save/);
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Hall' }).waitFor();
    await expect.poll(() => keyboard.focused()).toBe('section: Printers');

    await keyboard.tabTo(/^button: Check: Hall/);
    await keyboard.press('Enter');
    await page.getByText('Ready', { exact: true }).waitFor();
    expect(await keyboard.focused()).toBe('button: Check: Hall');

    await keyboard.tabTo(/^button: Test pattern: Hall/);
    await keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Test pattern on Hall' }).waitFor();
    await keyboard.tabTo(/^button: Print the test pattern/);
    await keyboard.press('Enter');
    await page.getByText('Saved as').waitFor();
    expect((await readdir(place)).filter((name) => name.endsWith('.pdf'))).toHaveLength(1);
    expect(await keyboard.focused()).toBe('button: Print it again');

    await keyboard.tabTo(/^button: Set the offset/);
    await keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Offset of Hall' }).waitFor();
    await expect.poll(() => keyboard.focused()).toMatch(/^input: .*Left edge, mm/);
    for (const [field, text] of rulers) {
      await keyboard.tabTo(field);
      await keyboard.type(text);
    }
    await keyboard.press('Enter');
    await page.getByText(/^Set: the print is moved/).waitFor();
    await expect.poll(() => keyboard.focused()).toBe('button: Close');
    await keyboard.press('Enter');
    await page.getByText(/print moved/).waitFor();
    await expect.poll(() => keyboard.focused()).not.toBe('nothing');

    await keyboard.tabTo(/^button: Change: Hall/);
    await keyboard.press('Enter');
    await keyboard.tabTo(/^input: Name/);
    await keyboard.type('Hall A');
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Hall A' }).waitFor();
    await page.getByText(/print moved/).waitFor();

    await keyboard.tabTo(/^button: Remove: Hall A/);
    await keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Remove Hall A?' }).waitFor();
    await keyboard.tabTo(/^button: 1Remove the printer/);
    await keyboard.press('Enter');
    await page.getByText('No printer').waitFor();
    await expect.poll(() => keyboard.focused()).toBe('section: Printers');
  }, 120_000);
});
