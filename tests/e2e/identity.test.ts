/** Who is this, by keyboard alone: the facts, the candidates, the proposal, and a second person with badge and PIN. */
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

describe.runIf(hasBrowser())('who is this', () => {
  test('is answered by keyboard alone, from an unknown code to the quarantine tag', async () => {
    const { page } = await openBenchWindow();
    page.setDefaultTimeout(15_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
    const scan = async (text: string): Promise<void> => {
      await keyboard.tabTo(/^input: Scan field/);
      await keyboard.type(text);
      await keyboard.press('Enter');
    };
    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await keyboard.shortcut('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
    await scan(demo.inspector);
    await page.getByRole('banner').getByText('Teo Arandal').waitFor();

    await scan('SCRATCHED-OFF-1');
    await page.getByRole('dialog').getByText('who is this?').waitFor();
    await keyboard.shortcut('3');
    await page.getByRole('heading', { name: 'Who is this?' }).waitFor();

    await keyboard.shortcut('1');
    await expect.poll(() => keyboard.focused()).toMatch(/^input: Serial number/);
    await keyboard.type('Q25A30?3?');
    await keyboard.press('Enter');
    await page.getByText('Q25A30?3?').waitFor();
    await keyboard.shortcut('8');
    await page.getByRole('heading', { name: 'Colour of the housing' }).waitFor();
    await keyboard.shortcut('6');
    await page.getByRole('main').getByText('Orange').waitFor();
    await keyboard.tabTo(/^button: Show who it may be/);
    await keyboard.press('Enter');

    await page.getByRole('heading', { name: 'Who is this? Case 1' }).waitFor();
    await page.getByRole('listitem').nth(5).waitFor();
    await keyboard.shortcut('1');
    await page.getByRole('heading', { name: 'Is it H7PTG-EG5TZ?' }).waitFor();
    await page.getByText('The register says it is in use.').waitFor();
    await keyboard.shortcut('1');
    await expect.poll(() => keyboard.focused()).toBe('input: PIN');
    await keyboard.type(demo.pin);
    await keyboard.press('Enter');

    await page.getByText('Teo Arandal proposed it. Now somebody else').waitFor();
    await scan(demo.attendant);
    await page.getByText('I looked at it: it is this device').waitFor();
    await keyboard.shortcut('1');
    await expect.poll(() => keyboard.focused()).toBe('input: PIN');
    await keyboard.type(demo.pin);
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Identity presumed: H7PTG-EG5TZ' }).waitFor();
    await expect.poll(() => keyboard.focused()).toMatch(/^button: 1Quarantine tag/);
    await keyboard.press('Enter');
    await page
      .getByRole('heading', { name: /H7PTG-EG5TZ|Out of service/ })
      .first()
      .waitFor();
  }, 120_000);
});
