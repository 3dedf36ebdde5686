/** An administrator adopts a program, and a competent person determines types of use, by keyboard alone. */
import { expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

const device = 'AFZQ45HXXZ';
const second = 'GJQ81T5WX2';

test.runIf(hasBrowser())(
  'a stricter program is written, refused where it is too weak, signed with the PIN, and names the rule on a device',
  async () => {
    const { page } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
    const scan = async (text: string): Promise<void> => {
      await keyboard.tabTo(/^input: Scan field/, 'on', 80);
      await keyboard.type(text);
      await keyboard.press('Enter');
    };
    const press = async (button: RegExp): Promise<void> => {
      await keyboard.tabTo(button, 'on', 80);
      await keyboard.press('Enter');
    };
    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await keyboard.shortcut('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });

    await scan(demo.administrator);
    await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
    await press(/^a: Setup/);
    await page.getByRole('heading', { name: 'Setup' }).waitFor();
    await keyboard.tabTo(/^tab: /, 'on', 60);
    while (!(await keyboard.focused()).startsWith('tab: Program')) await keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'The program in force' }).waitFor();
    await press(/^button: Change the program/);
    await page.getByRole('heading', { name: 'A new version of the program' }).waitFor();

    await keyboard.tabTo(/^input: Months between documented inspections/);
    await keyboard.press('Backspace');
    await keyboard.type('18');
    await keyboard.tabTo(/^input: PIN of the administrator/, 'on', 60);
    await keyboard.type(demo.pin);
    await keyboard.press('Enter');
    await page
      .getByText(/every 18 months is too rare/)
      .first()
      .waitFor();

    await keyboard.tabTo(/^input: Months between documented inspections/, 'back', 60);
    await keyboard.press('Backspace');
    await keyboard.type('4');
    await keyboard.tabTo(/^input: PIN of the administrator/, 'on', 60);
    await keyboard.type(demo.pin);
    await keyboard.press('Enter');
    await page.getByText(/^Version 3 holds now/).waitFor();
    await page.getByRole('cell', { name: 'every 4 months' }).waitFor();

    await press(/^button: Sign out/);
    await scan(demo.inspector);
    await page.getByRole('banner').getByText('Teo Arandal').waitFor();
    await scan(device);
    const due = page.getByRole('region', { name: 'What it is due for' });
    await due
      .getByText(/employer: 4 months from/)
      .first()
      .waitFor();
    await press(/^button: Determine type of use/);
    await page.getByRole('dialog').waitFor();
    await keyboard.tabTo(/^input: Moderate to heavy/);
    await keyboard.press('ArrowDown');
    await press(/^button: Save/);
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await due.getByText(/Severe to continuous, from .* determined by Teo Arandal/).waitFor();
    await due
      .getByText(/standard: 3 months from/)
      .first()
      .waitFor();
    expect(await due.getByText('It cannot pass a documented inspection').count()).toBe(0);

    await press(/^a: Register/);
    await press(/^button: Type of use of several/);
    await page.getByText('0 devices chosen.').waitFor();
    await scan(device);
    await page.getByText('1 device chosen.').waitFor();
    await scan(second);
    await page.getByText('2 devices chosen.').waitFor();
    await scan('XCCONFIRM');
    await page.getByRole('dialog', { name: 'Type of use of 2 devices' }).waitFor();
    await keyboard.tabTo(/^input: Infrequent to light/);
    await keyboard.press(' ');
    await press(/^button: Save/);
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    for (const benchId of [device, second]) {
      await scan(benchId);
      await due.getByText(/Infrequent to light, from .* determined by Teo Arandal/).waitFor();
    }
  },
  120_000,
);
