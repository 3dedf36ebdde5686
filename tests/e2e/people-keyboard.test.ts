/** An administrator changes people, and a competent person corrects the record, by keyboard alone. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo, demoFolderOfToday } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

const demoWindow = async (): Promise<{ page: Page; keyboard: Keyboard }> => {
  const { page } = await openBenchWindow({ folder: await demoFolderOfToday() });
  page.setDefaultTimeout(10_000);
  const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor();
  return { page, keyboard };
};

const typeIntoScanField = async (keyboard: Keyboard, text: string): Promise<void> => {
  await keyboard.tabTo(/^input: Scan field/, 'on', 60);
  await keyboard.type(text);
  await keyboard.press('Enter');
};

const press = async (keyboard: Keyboard, button: RegExp): Promise<void> => {
  await keyboard.tabTo(button, 'on', 60);
  await keyboard.press('Enter');
};

test.runIf(hasBrowser())(
  'a designation ends and a person leaves, each with its reason, by keyboard alone',
  async () => {
    const { page, keyboard } = await demoWindow();
    await typeIntoScanField(keyboard, demo.administrator);
    await page.getByRole('heading', { name: 'Training to be seen to' }).waitFor();
    await press(keyboard, /^button: Open: Sunniva Calloway/);
    await page.getByRole('heading', { name: 'Sunniva Calloway' }).waitFor();

    await press(keyboard, /^button: End the designation/);
    await keyboard.type('Other duties');
    await press(keyboard, /^button: Save/);
    await page.getByText('Not designated: may not sign').waitFor();
    await page.getByText(/Ended on .* by Ilse Marrowby: Other duties/).waitFor();

    await press(keyboard, /^button: Works here no more/);
    await keyboard.type('Moved away');
    await press(keyboard, /^button: Save/);
    await page.getByText(/Left on .*: may not sign/).waitFor();
    await keyboard.tabTo(/^button: Works here again/);
  },
  120_000,
);

test.runIf(hasBrowser())(
  'a serial number of a device in service is corrected by keyboard alone, and both stay in sight',
  async () => {
    const { page, keyboard } = await demoWindow();
    await typeIntoScanField(keyboard, demo.inspector);
    await page.getByRole('banner').getByText('Teo Arandal').waitFor();
    await typeIntoScanField(keyboard, 'NVL2191144');
    await page.getByText(/was 2018-03, because: The 9 on the marking was read as an 8/).waitFor();

    await press(keyboard, /^button: Correct the record/);
    await press(keyboard, /^button: Correct: Serial number/);
    await page.keyboard.press('Control+a');
    await keyboard.type('N2-19-1145');
    await keyboard.tabTo(/^input: .*Why is it wrong/);
    await keyboard.type('Misread');
    await keyboard.tabTo(/^input: Your PIN/);
    await keyboard.type(demo.pin);
    await keyboard.press('Enter');
    await page
      .getByRole('dialog')
      .getByText(/is in service. Read the marking on the device now/)
      .waitFor();
    await keyboard.tabTo(/^input: I have read the marking/);
    await keyboard.press(' ');
    await press(keyboard, /^button: Sign the correction/);
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByText('Serial number: N2-19-1145').waitFor();
    expect(await page.getByText(/was N2-19-1144, because: Misread/).count()).toBe(1);
  },
  120_000,
);
