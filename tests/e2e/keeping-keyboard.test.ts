/** The record is backed up and comes back, and the station is looked over, by keyboard alone. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

test.runIf(hasBrowser())(
  'a backup is made, compared and restored, the station is looked over and the help is read by keyboard alone',
  async () => {
    const folder = await mkdtemp(join(tmpdir(), 'srl-bench-backups-'));
    onTestFinished(() => rm(folder, { recursive: true }));
    const { page } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
    const signIn = async (): Promise<void> => {
      await keyboard.tabTo(/^input: Scan field/);
      await keyboard.type(demo.administrator);
      await keyboard.press('Enter');
      await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
    };

    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await keyboard.shortcut('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
    await signIn();
    await keyboard.tabTo(/^a: Setup/);
    await keyboard.press('Enter');
    await keyboard.tabTo(/^tab: People/);
    for (let tab = 0; tab < 7; tab += 1) await keyboard.press('ArrowRight');

    await keyboard.tabTo(/^input: Folder for backups/);
    await keyboard.type(folder);
    await keyboard.press('Enter');
    await page.getByText('Saved.').waitFor();
    await keyboard.tabTo(/^button: Back up now/);
    await keyboard.press('Enter');
    await page.getByText(/^Made and proved: \d+ events/).waitFor();
    await expect.poll(() => keyboard.focused()).toMatch(/^button: Back up now/);

    await keyboard.tabTo(/^button: Open and compare/);
    await keyboard.press('Enter');
    await page.getByRole('dialog').getByText('It is an earlier state of the record that is here').waitFor();
    await keyboard.tabTo(/^input: Your PIN/);
    await keyboard.type(demo.pin);
    await keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByRole('banner').getByText('Ilse Marrowby').waitFor({ state: 'detached' });
    await signIn();
    await page.getByRole('heading', { name: 'Restore a backup' }).waitFor();

    await keyboard.tabTo(/^tab: Backup/);
    await keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'How this station stands' }).waitFor();
    await page.getByText(/^(Nothing is wrong|\d+ things? (is|are) wrong)/).waitFor();
    await keyboard.tabTo(/^button: .*Try it/);
    await keyboard.press('Enter');
    await page.getByText('Waiting for the scan').waitFor();
    await keyboard.press('Enter');
    await page.getByText('Waiting for the scan').waitFor({ state: 'detached' });
    await keyboard.tabTo(/^button: .*Save a report/);
    const saved = page.waitForEvent('download');
    await keyboard.press('Enter');
    const report = await readFile(await (await saved).path(), 'utf8');
    expect(JSON.parse(report).findings.length).toBeGreaterThan(12);
    expect(report).not.toContain(folder);
    await keyboard.shortcut('?');
    await page.getByRole('dialog').getByText('People, models, rules').waitFor();
    await keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await keyboard.tabTo(/^input: Scan field/);
    await keyboard.shortcut('?');
    expect(await page.getByRole('dialog').count()).toBe(0);
  },
  240_000,
);
