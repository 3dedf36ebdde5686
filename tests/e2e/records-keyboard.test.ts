/** The records by keyboard alone: filtered, one opened, and its report made. */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

test.runIf(hasBrowser())(
  'an inspection is found in the records, read, and its report made by keyboard alone',
  async () => {
    const { page, folder } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));

    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await keyboard.shortcut('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
    await keyboard.tabTo(/^input: Scan field/);
    await keyboard.type(demo.inspector);
    await keyboard.press('Enter');
    await page.getByRole('banner').getByText('Teo Arandal').waitFor();
    await keyboard.tabTo(/^a: Records/);
    await keyboard.press('Enter');
    await page.getByRole('table', { name: 'Records' }).waitFor();

    await keyboard.tabTo(/^select: Verdict/);
    await keyboard.press('ArrowDown');
    await keyboard.press('ArrowDown');
    await expect.poll(() => page.getByRole('table', { name: 'Records' }).getByText('Pass').count()).toBe(0);
    await keyboard.tabTo(/^a: Inspection \d+/);
    await keyboard.press('Enter');
    await page.getByRole('table', { name: 'Answers' }).waitFor();

    await keyboard.tabTo(/^button: Make the report/);
    await keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    await keyboard.tabTo(/^button: Make the report/);
    const shown = page.context().waitForEvent('page');
    await keyboard.press('Enter');
    await dialog.getByText('The report is made.').waitFor();
    const files = await readdir(join(folder, 'reports'));
    expect(files).toHaveLength(1);
    expect(files[0]).toMatch(/^inspection-\d+-.*\.pdf$/);
    await (await shown).close();
    await page.bringToFront();
    await keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  },
  120_000,
);
