/** The way back of a doubted device by keyboard alone: a finding is written, a second person agrees, the tag comes back. */
import { expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openDesk } from './desk-crew.ts';
import { Keyboard } from './keyboard.ts';

/** Two competent persons of the invented depot. */
const first = { badge: demo.inspector, name: 'Teo Arandal' };
const second = { badge: demo.regularUser, name: 'Wren Castellan' };

test.runIf(hasBrowser())(
  'a doubt is settled, agreed to, and its device scanned back to the bench by keyboard alone',
  async () => {
    const { window, ready, ask } = await openDesk();
    const { page } = window;
    page.setDefaultTimeout(20_000);
    const benchId = ready[0]!;
    const shown = `${benchId.slice(0, 5)}-${benchId.slice(5)}`;
    await ask('device.remove', { benchId, ground: 'other', note: 'A mark on the hook.' });
    const { symbols } = await ask<{ symbols: readonly { text: string }[] }>('tag.issue', {
      benchId,
      kind: 'quarantine',
    });
    await ask('tag.prove', { text: symbols.find(({ text }) => text.startsWith('SRL '))!.text });

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

    await signIn(first);
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
    const { device } = await ask<{ device: { currentTag: { tagNumber: number } } }>('device.show', {
      benchId,
    });
    await keyboard.type(String(device.currentTag.tagNumber));
    await keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await step('Inspect it anew at the bench');
    expect(await ask('device.show', { benchId })).toMatchObject({
      device: { standing: 'quarantined', nextAction: 'start inspection' },
    });
  },
  240_000,
);
