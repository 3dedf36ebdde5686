/** The way back of a doubted device by keyboard alone: a finding is written, a second person agrees, the tag comes back; and a plan of returns. */
import { expect, test } from 'vitest';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import { hasBrowser } from '../support/browser.ts';
import { demo, demoFolderOfToday } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { ask } from './held-depot.ts';
import { Keyboard } from './keyboard.ts';

/** In service, by `demo-data/fleet.json`. */
const benchId = 'MM68GV91MM' as BenchId;

/** Two competent persons of the invented depot. */
const first = { badge: demo.inspector, name: 'Teo Arandal' };
const second = { badge: demo.regularUser, name: 'Wren Castellan' };

test.runIf(hasBrowser())(
  'a doubt is settled, agreed to, and its device scanned back to the bench by keyboard alone; then returns are planned',
  async () => {
    const window = await openBenchWindow({ folder: await demoFolderOfToday() });
    const { page, scan } = window;
    page.setDefaultTimeout(30_000);
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor();
    await scan(first.badge);
    await page.getByRole('banner').getByText(first.name).waitFor();
    const shown = formatBenchId(benchId);
    await ask(window, 'device.remove', { benchId, ground: 'other', note: 'A mark on the hook.' });
    const { symbols } = await ask<{ symbols: readonly { text: string }[] }>(window, 'tag.issue', {
      benchId,
      kind: 'quarantine',
    });
    await ask(window, 'tag.prove', { text: symbols.find(({ text }) => text.startsWith('SRL '))!.text });

    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
    const dialog = page.getByRole('dialog');
    const pressOn = async (name: RegExp): Promise<void> => {
      await keyboard.tabTo(name, 'on', 80);
      await keyboard.press('Enter');
    };
    const signIn = async ({ badge, name }: { badge: string; name: string }): Promise<void> => {
      await keyboard.tabTo(/^input: Scan field/, 'on', 80);
      await keyboard.type(badge);
      await keyboard.press('Enter');
      await page.getByRole('banner').getByText(name).waitFor();
    };
    const step = (text: string) => page.getByRole('main').getByText(text, { exact: true }).waitFor();

    await pressOn(/^a: Held/);
    await page.getByRole('table', { name: 'Held' }).waitFor();
    await pressOn(new RegExp(`^a: ${shown}`));
    await step('Get and record the missing evidence');
    await pressOn(/^button: Record evidence/);
    await dialog.waitFor();
    await keyboard.tabTo(/^textarea: What was looked at/);
    await keyboard.type('It is paint, and wiped off.');
    await pressOn(/^button: Save/);
    await dialog.waitFor({ state: 'detached' });
    await step('A second competent person looks and agrees');

    await pressOn(/^button: Look and agree/);
    await dialog.getByText('Sign in with your own badge first').waitFor();
    await keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await signIn(second);
    await pressOn(/^button: Look and agree/);
    await dialog.getByText('It is paint, and wiped off.').waitFor();
    await keyboard.type(demo.pin);
    await keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await step('Scan its quarantine tag back in');

    await pressOn(/^button: Scan the tag back in/);
    await dialog.waitFor();
    const { device } = await ask<{ device: { currentTag: { tagNumber: number } } }>(window, 'device.show', {
      benchId,
    });
    await keyboard.type(String(device.currentTag.tagNumber));
    await keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await step('Inspect it anew at the bench');
    expect(await ask(window, 'device.show', { benchId })).toMatchObject({
      device: { standing: 'quarantined', nextAction: 'start inspection' },
    });

    await pressOn(/^a: Held/);
    await pressOn(/^button: Returns to manufacturers/);
    await pressOn(/^button: Repair or replace/);
    await pressOn(/^button: Change Currency and months/);
    await dialog.waitFor();
    await keyboard.type('EUR');
    await keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await page.getByRole('main').getByText('Every price is in EUR.').waitFor();
    await pressOn(/^button: Make the plan for/);
    await page.getByRole('heading', { name: 'Decisions' }).waitFor();
    await pressOn(/^button: 1/);
    await page
      .getByRole('main')
      .getByText(/^Decision 1 of/)
      .waitFor();
  },
  240_000,
);
