/** The record is backed up and comes back by keyboard alone. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

test.runIf(hasBrowser())(
  'a backup is made, compared and restored by keyboard alone',
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
  },
  120_000,
);
