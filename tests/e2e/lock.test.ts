/** An unattended window: it warns, locks, shows nothing, and one scan goes on where the hand left off. */

import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { launchBrowser, openStage, type Stage } from './stage.ts';
import { WedgeScanner } from './wedge-scanner.ts';

const axeSource = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
let stage: Stage;
let folder: string | undefined;
let elapsedMs = 0;

/** The time passes for the page and for the station, and nobody does anything meanwhile. */
const pass = async (page: Page, seconds: number): Promise<void> => {
  elapsedMs += seconds * 1000;
  await page.clock.fastForward(seconds * 1000);
  await page.clock.runFor(1_000);
};

/** Everything that a screen reader finds; what is not to be seen is not to be found either. */
const seen = (page: Page): Promise<string> => page.locator('body').ariaSnapshot();

/** The lock is there, and has the focus. */
const locked = async (page: Page): Promise<void> => {
  await page.getByRole('heading', { name: 'This window is locked' }).waitFor();
  await page.waitForFunction(() => document.activeElement?.matches('[data-lock] input') === true);
};

const openWindow = async (hash: string) => {
  const { page, faults } = await stage.openWindow({
    language: 'en',
    theme: 'light',
    width: 1366,
    height: 768,
  });
  page.setDefaultTimeout(20_000);
  const scanner = new WedgeScanner(page, await page.context().newCDPSession(page));
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor();
  await scanner.scan(demo.inspector);
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
  await page.evaluate((next) => {
    window.location.hash = next;
  }, hash);
  await page.clock.install();
  return { page, scanner, faults };
};

describe.runIf(hasBrowser())('an unattended window', () => {
  beforeAll(async () => {
    browser = await launchBrowser();
    folder = await mkdtemp(join(tmpdir(), 'srl-bench-lock-'));
    stage = await openStage(browser, folder, () => elapsedMs);
    await stage.expectOutput('station.load-demo', {});
  }, 180_000);

  afterAll(async () => {
    await stage?.close();
    await browser?.close();
    if (folder !== undefined) await rm(folder, { recursive: true, force: true });
  });

  test('warns half a minute before, goes on at any key, and is locked where nobody strikes one', async () => {
    const { page } = await openWindow('#/register');
    const warning = page.getByRole('alert').filter({ hasText: 'press any key to go on' });
    await page.getByRole('table').waitFor();
    await pass(page, 268);
    expect(await warning.count()).toBe(0);
    await pass(page, 4);
    await warning.waitFor();
    const told = page.waitForResponse(
      async (response) => response.request().postDataJSON()?.operation === 'session.attend',
    );
    await page.keyboard.press('Shift');
    await warning.waitFor({ state: 'detached' });
    await told;
    await pass(page, 272);
    await warning.waitFor();
    await pass(page, 30);
    await locked(page);
    expect(await warning.count()).toBe(0);
  }, 120_000);

  test('shows who it belongs to and nothing else, to the eye, to a screen reader and to the keyboard', async () => {
    const { page, scanner } = await openWindow('#/register');
    await page.getByRole('table').waitFor();
    await pass(page, 301);
    await locked(page);
    const text = await seen(page);
    expect(text).toContain('Teo Arandal');
    expect(text).toContain('Inspector');
    expect(await page.locator('table').isVisible()).toBe(false);
    for (const hidden of ['Norvane', 'Quillmoor', 'Register', 'Harrow Point'])
      expect(text).not.toContain(hidden);
    for (const role of ['table', 'navigation', 'banner', 'main', 'row'] as const)
      expect(await page.getByRole(role).count(), role).toBe(0);
    for (let tabs = 0; tabs < 12; tabs += 1) {
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.closest('[data-lock]') !== null)).toBe(true);
    }
    await page.evaluate(axeSource);
    const { violations } = await page.evaluate<AxeResults>('axe.run(document)');
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.keyboard.press('Escape');
    await scanner.scan('GJQ81T5WX2');
    await page.getByText('Only a badge opens this window.').waitFor();
    expect(new URL(page.url()).hash).toBe('#/register');
    await page.reload();
    await locked(page);
    expect(await seen(page)).not.toContain('Norvane');
  }, 120_000);

  test('goes on at one scan of the same badge with what was typed in an open dialog, and the focus where it was', async () => {
    const { page, scanner, faults } = await openWindow('#/device/GJQ81T5WX2');
    await page
      .getByRole('button', { name: /Remove from service/ })
      .first()
      .click();
    await page.getByRole('dialog').getByRole('button').first().click();
    const words = page.getByRole('dialog').getByRole('textbox').first();
    await words.fill('Kink near the hook');
    await pass(page, 301);
    await locked(page);
    expect(await seen(page)).not.toContain('Remove from service');
    await scanner.scan(demo.inspector);
    await page.getByRole('heading', { name: 'This window is locked' }).waitFor({ state: 'detached' });
    expect(await words.inputValue()).toBe('Kink near the hook');
    await expect.poll(() => words.evaluate((field) => field === document.activeElement)).toBe(true);
    expect(faults).toEqual([]);
  }, 120_000);

  test('forgets a PIN that was typed and not yet signed with', async () => {
    const { page } = await openWindow('#/person/P002');
    await page.getByRole('button', { name: 'Change my PIN' }).click();
    const fields = page.getByRole('dialog').locator('input[type="password"]');
    await fields.first().fill(demo.pin);
    await pass(page, 301);
    await locked(page);
    await page.keyboard.type(demo.inspector, { delay: 150 });
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'This window is locked' }).waitFor({ state: 'detached' });
    expect(await fields.first().inputValue()).toBe('');
  }, 120_000);

  test('opens by keyboard alone, and for another badge as that person', async () => {
    const { page } = await openWindow('#/');
    await pass(page, 301);
    await locked(page);
    await page.keyboard.type('NOBODY-7', { delay: 150 });
    await page.keyboard.press('Enter');
    await page.getByText(/No person has the badge/).waitFor();
    await page.keyboard.type(demo.attendant, { delay: 150 });
    await page.keyboard.press('Enter');
    await page.getByRole('banner').getByText('Bram Kestrin').waitFor();
  }, 120_000);
});
