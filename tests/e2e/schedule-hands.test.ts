/** The schedule by keyboard alone, and by scanner alone. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { CommandName } from '../../src/domain/command-symbol.ts';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { ask } from './held-depot.ts';
import { inspectedDevice } from './inspected-device.ts';
import { Keyboard } from './keyboard.ts';
import { WedgeScanner } from './wedge-scanner.ts';

/** Gives the demo, signs the badge in, and goes to the schedule. */
const toSchedule = async (page: Page, keyboard: Keyboard, badge: string): Promise<void> => {
  await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
  await keyboard.shortcut('1');
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
  await keyboard.tabTo(/^input: Scan field/);
  await keyboard.type(badge);
  await keyboard.press('Enter');
  await page.getByRole('banner').getByRole('button', { name: 'Sign out' }).waitFor();
  await keyboard.tabTo(/^a: Schedule/);
  await keyboard.press('Enter');
  await page.getByRole('table', { name: 'Week by week' }).waitFor();
};

test.runIf(hasBrowser())(
  'the hours of the bench are set, a week opened, and its pick list made by keyboard alone',
  async () => {
    const { page, folder } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
    await toSchedule(page, keyboard, demo.administrator);

    await keyboard.tabTo(/^button: .*Bench hours/);
    await keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    await keyboard.tabTo(/^input: Saturday/);
    await keyboard.press('Backspace');
    await keyboard.type('2');
    await keyboard.tabTo(/^button: Save/);
    await keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });

    await keyboard.tabTo(/^a: 1\d Mar 2026|^a: \d+ \w+ 20\d\d/);
    await keyboard.press('Enter');
    await page.getByRole('columnheader', { name: 'Where' }).waitFor();
    await keyboard.tabTo(/^button: .*Pick list/);
    await keyboard.press('Enter');
    await dialog.waitFor();
    await keyboard.tabTo(/^button: Make the report/);
    const shown = page.context().waitForEvent('page');
    await keyboard.press('Enter');
    await dialog.getByText('The report is made.').waitFor();
    expect(await readdir(join(folder, 'reports'))).toEqual([expect.stringMatching(/^bench-plan-.*\.pdf$/)]);
    await (await shown).close();
  },
  120_000,
);

test.runIf(hasBrowser())(
  'the weeks are turned and the calendar file is made by scanner alone',
  async () => {
    const { page, folder } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const session = await page.context().newCDPSession(page);
    await toSchedule(page, new Keyboard(page, session), demo.inspector);
    const scanner = new WedgeScanner(page, session);
    const command = (name: CommandName) =>
      scanner.type(`XC${name.toUpperCase()}`, { layout: 'us', computer: 'us' });

    await command('next');
    const title = page.getByRole('main').getByRole('heading', { level: 1 });
    await expect.poll(() => title.textContent()).toMatch(/ to /);
    const first = await title.textContent();
    await command('next');
    await expect.poll(() => title.textContent()).not.toBe(first);
    await command('back');
    await expect.poll(() => title.textContent()).toBe(first);
    await command('cancel');
    await page.getByRole('table', { name: 'Week by week' }).waitFor();
    await command('2');
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    await command('confirm');
    await dialog.getByText('The calendar file is made.').waitFor();
    await command('confirm');
    await dialog.waitFor({ state: 'detached' });
    const [file = ''] = await readdir(join(folder, 'reports'));
    expect(file).toMatch(/\.ics$/);
    expect(await readFile(join(folder, 'reports', file), 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n/);
  },
  120_000,
);

test.runIf(hasBrowser())(
  'the schedule is reached and the hours of the bench are set by scanner alone',
  async () => {
    const { page, scan, command } = await openBenchWindow();
    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await command('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
    page.setDefaultTimeout(10_000);
    await scan(demo.administrator);
    await page.getByRole('banner').getByRole('button', { name: 'Sign out' }).waitFor();
    await command('schedule');
    await page.getByRole('table', { name: 'Week by week' }).waitFor();
    await command('4');
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    await command('next');
    await expect
      .poll(() => dialog.getByLabel('Monday').evaluate((input) => input === document.activeElement))
      .toBe(true);
    await command('next', '6', 'point', '2', '5', '5', 'erase', 'confirm');
    await dialog.waitFor({ state: 'detached' });
    await command('4');
    await dialog.waitFor();
    expect(await dialog.getByLabel('Monday').inputValue()).toBe('4');
    expect(await dialog.getByLabel('Tuesday').inputValue()).toBe('6.25');
    await command('cancel');
    await command('desk');
    await page.getByRole('heading', { name: /attendant scans|Scan a badge/ }).waitFor();

    await ask({ page }, 'session.sign-in', { badge: demo.inspector });
    await inspectedDevice({ page }, 'BLIND-1');
    await scan(demo.administrator);
    await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
    await command('schedule');
    await page.getByRole('table', { name: 'Week by week' }).waitFor();
    await command('5');
    await page.getByRole('heading', { name: 'Blind second inspections' }).waitFor();
    await command('1');
    await dialog.waitFor();
    await command('5', '0', 'confirm');
    await dialog.waitFor({ state: 'detached' });
    await page.getByRole('table', { name: 'Waiting for the second inspection' }).waitFor();
    await scan(demo.regularUser);
    await page.getByRole('banner').getByText('Wren Castellan').waitFor();
    await command('schedule');
    await page.getByRole('table', { name: 'Week by week' }).waitFor();
    await command('4');
    const mine = page.getByRole('row').filter({ hasText: 'You may inspect it' }).first();
    const benchId = (await mine.getByRole('link').textContent()) ?? '';
    await scan(benchId.replace('-', ''));
    await page.getByRole('heading', { name: `${benchId} was drawn for a blind second inspection` }).waitFor();
    expect(await page.getByRole('region', { name: 'Inspections' }).count()).toBe(0);
    await command('confirm');
    await page.getByRole('navigation', { name: 'Zones of the inspection' }).waitFor();
    await page.getByRole('main').getByText('Blind second inspection').waitFor();
  },
  120_000,
);
