/** The whole job by keyboard alone: no mouse, no scanner, every key as slow as a person's. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { procedure } from '../support/shipped-rules.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

const header = [
  'button: Skip to the screen',
  'input: Scan field: scan, or type and press Enter',
  'button: Camera',
  'button: Sign out',
  'button: Help',
  'button: Show in Spanish: Español',
  'button: Dark screen',
  'a: Start',
  'a: Desk',
  'a: Bench',
  'a: Held',
  'a: Register',
  'a: Schedule',
  'a: Records',
  'a: Setup',
];

const typeIntoScanField = async (keyboard: Keyboard, text: string): Promise<void> => {
  await keyboard.tabTo(/^input: Scan field/);
  await keyboard.type(text);
  await keyboard.press('Enter');
};

const loadDemoAndSignIn = async (page: Page, keyboard: Keyboard): Promise<void> => {
  await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
  await keyboard.shortcut('1');
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
  await typeIntoScanField(keyboard, demo.inspector);
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
};

const register = async (page: Page, keyboard: Keyboard): Promise<void> => {
  await typeIntoScanField(keyboard, 'QM152699773');
  await page.getByRole('dialog').getByText('QM152699773').waitFor();
  await expect.poll(() => keyboard.focused()).toMatch(/A new device: register it$/);
  await keyboard.shortcut('1');
  await page.getByRole('heading', { name: 'Register a device' }).waitFor();
  await expect.poll(() => keyboard.focused()).toBe('li: 1. Which model?');
  await keyboard.tabTo(/^button: 4Quillmoor Stayline 50 ft/);
  await keyboard.press('Enter');
  await expect.poll(() => keyboard.focused()).toBe('li: 2. What does its marking say?');
  for (let element = 0; element < 9; element += 1) await keyboard.shortcut('1');
  await keyboard.tabTo(/^input: What it says: Serial number/);
  await keyboard.type('Q26C99773');
  await keyboard.tabTo(/^input: What it says: Date of manufacture/);
  await keyboard.type('2026-05');
  await keyboard.tabTo(/^button: Next/, 'back');
  await keyboard.press('Enter');
  await expect.poll(() => keyboard.focused()).toBe('li: 3. Codes and user');
  await keyboard.tabTo(/^button: Register the device/);
  await keyboard.press('Enter');
  await page.getByRole('button', { name: 'Start inspection' }).waitFor();
  await expect.poll(() => keyboard.focused()).toMatch(/^main: /);
};

/** Begins after a second thought, and answers every check: good, but for one crushing at 3.2 m, placed by arrow keys. */
const inspect = async (page: Page, keyboard: Keyboard): Promise<void> => {
  await keyboard.tabTo(/^button: Start inspection/);
  await keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await expect.poll(() => keyboard.focused()).toBe('button: Start inspection');
  await keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await expect.poll(() => keyboard.focused()).toBe('button: Begin');
  await keyboard.press('Enter');
  for (const [index, check] of procedure.checks.entries()) {
    await page.getByText(`Check ${index + 1} of ${procedure.checks.length}`).waitFor();
    await expect.poll(() => keyboard.focused()).toBe(`h1: ${check.title.en}`);
    if (check.key !== 'lifeline.shape') await keyboard.shortcut(check.kind === 'marking' ? '1' : 'g');
    else await placeCrushing(page, keyboard);
  }
};

const placeCrushing = async (page: Page, keyboard: Keyboard): Promise<void> => {
  await keyboard.shortcut('d');
  await keyboard.press('Escape');
  await keyboard.shortcut('d');
  await keyboard.shortcut('1');
  await expect.poll(() => keyboard.focused()).toBe('input: From the hook (m)');
  await keyboard.press('3');
  await keyboard.press('ArrowUp');
  await keyboard.press('ArrowUp');
  expect(await page.getByRole('slider').getAttribute('aria-valuetext')).toBe('3.2 m from the hook');
  await keyboard.press('Enter');
  await page.getByRole('button', { name: 'Take off: Crushing, 3.2 m' }).waitFor();
  await expect.poll(() => keyboard.focused()).toBe('h1: Lifeline: shape');
  await keyboard.press('Enter');
};

const sign = async (page: Page, keyboard: Keyboard): Promise<void> => {
  await page.getByText('REMOVE FROM SERVICE').waitFor();
  await page.getByText('Lifeline crushed at 3.2 m from the hook.').first().waitFor();
  await expect.poll(() => keyboard.focused()).toBe('input: PIN');
  await keyboard.shortcut('b');
  await page.getByText(`Check ${procedure.checks.length} of ${procedure.checks.length}`).waitFor();
  await keyboard.shortcut('n');
  await expect.poll(() => keyboard.focused()).toBe('input: PIN');
  await keyboard.type(demo.pin);
  await keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Out of service: lock it away' }).waitFor();
};

/** Windows are asked for and not opened: headless Chromium gives the page behind one that closes the focus of a fresh page. */
const keepWindowsShut = (page: Page): Promise<void> =>
  page.evaluate(() => {
    window.open = (address) => {
      document.documentElement.dataset.opened = String(address);
      return window;
    };
  });

const openedAddress = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.opened);

describe.runIf(hasBrowser())('the keyboard alone', () => {
  test('leads through registration, the walk with a finding, the signature and the tag', async () => {
    const { page } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));

    await loadDemoAndSignIn(page, keyboard);
    expect(await keyboard.focusOrder()).toEqual([
      ...header,
      'a: 25Ready',
      'a: 5Out',
      'a: 4Due within 30 days',
      'a: 3Overdue',
      'a: 4Never inspected',
      'a: 7Held',
      'a: 1Open inspections',
      'a: 1Tags not yet scanned',
      'a: No backup',
      'button: Start the tour',
      'button: Not now',
      'button: Resume 98',
      'button: Bram KestrinAttendantHP10055',
      'button: Iker VandalleUserHP10093',
      'button: Ilse MarrowbyAdministratorHP10017',
      'button: Nadia SolheimUserHP10062',
      'button: Odile FarrantInspectorHP10048',
      'button: Sunniva CallowayInspectorHP10079',
      'button: Teo ArandalInspectorHP10024 · signed in',
      'button: Tilda OsterbyUserHP10109',
      'button: Wren CastellanInspector, AttendantHP10031',
      'button: All notices',
    ]);

    await register(page, keyboard);
    expect(await keyboard.focusOrder()).toEqual([
      ...header,
      'button: Start inspection',
      'button: Remove from service now',
      'button: Determine type of use',
      'button: Record a revalidation',
      'button: Bench ID label',
      'button: Read the marking, then print a label again',
      'button: Enter the dates',
      'button: Device record',
      'button: Show the lifeline',
      'button: Correct the record',
      'button: Keep a picture of the marking',
    ]);

    await inspect(page, keyboard);
    await sign(page, keyboard);
    await keyboard.tabTo(/^button: Open for printing/);
    await keepWindowsShut(page);
    await keyboard.press('Enter');
    await page.getByText('-tag-1-quarantine.pdf').waitFor();
    expect(await openedAddress(page)).toMatch(/^blob:/);
    await expect.poll(() => keyboard.focused()).toBe('button: Open again for printing');
  }, 120_000);
});
