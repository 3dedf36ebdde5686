/** A maker's own code in a real window: what it fills in at registration, what it never does by itself, and damaged ones. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo, demoFolderOfToday } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';

/** Article number of the Stayline 50 ft of the invented depot; GS1 keeps 952 for demonstrations. */
const gtin = '09520000000042';
const code = `(01)${gtin}(11)260300(21)Q26C49077`;
const GS = '\x1d';

const signedInWindow = async () => {
  const window = await openBenchWindow({ folder: await demoFolderOfToday() });
  const { page, scan } = window;
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor();
  await scan(demo.inspector);
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
  return window;
};

/** What the scan field is given, as a scanner or a person that delivers control characters gives it. */
const enter = async (page: Page, text: string): Promise<void> => {
  const field = page.getByRole('banner').getByRole('textbox');
  await field.fill(text);
  await field.press('Enter');
  await page.waitForLoadState('networkidle');
};

const wordsOf = (page: Page, element: string) => page.getByLabel(`What it says: ${element}`).inputValue();

describe.runIf(hasBrowser())('a maker’s code in the window', () => {
  test('registers a device by scanner alone, but only once a person has answered what it filled in', async () => {
    const { page, scan, command } = await signedInWindow();
    await scan(code);
    await page.getByRole('dialog').getByText('serial number Q26C49077').waitFor();
    await command('1');
    await page.getByRole('main').getByText('named by the scanned code').waitFor();
    await command('1');
    await page.getByText('from code: compare').first().waitFor();
    expect(await wordsOf(page, 'Serial number')).toBe('Q26C49077');
    expect(await wordsOf(page, 'Date of manufacture')).toBe('2026-03');
    await command('next');
    await page.getByText('9 elements still open').waitFor();
    await command('1', '1', '1', '1', '1', '1', '1', '1', '1', 'next');
    await page.getByRole('button', { name: 'Register the device' }).waitFor();
    await command('confirm');
    await page.getByRole('button', { name: 'Start inspection' }).waitFor();
    const benchId = await page.getByRole('heading', { level: 1 }).textContent();
    await page.getByRole('link', { name: 'Start' }).click();
    // The same code as another scanner sends it: with an identifier, FNC1, and its elements in another order.
    await enter(page, `]d221Q26C49077${GS}01${gtin}11260300`);
    await page.getByRole('heading', { level: 1, name: benchId ?? '' }).waitFor();
  }, 120_000);

  test('scanned while the form is open fills what is empty, and never writes over what a person typed', async () => {
    const { page, scan, command } = await signedInWindow();
    await page.evaluate(() => {
      window.location.hash = '#/new-device';
    });
    await page.getByRole('button', { name: /Stayline 50 ft/ }).click();
    await page.getByLabel('What it says: Serial number').fill('Q26C49070');
    await scan(`(01)${gtin}`);
    await page.getByRole('status').getByText('It names the model, not one device').waitFor();
    await scan(code);
    await page.getByText('The scanned code says Q26C49077. Is it a code of this device?').waitFor();
    expect(await wordsOf(page, 'Serial number')).toBe('Q26C49070');
    expect(await wordsOf(page, 'Date of manufacture')).toBe('2026-03');
    await command('1', '1', '1', '1', '1', '1', '1', '1', '1', 'next');
    await page.getByRole('button', { name: 'Register the device' }).waitFor();
    expect(
      await page
        .getByRole('listitem')
        .filter({ hasText: `(01)${gtin}` })
        .count(),
    ).toBe(1);
    await command('confirm');
    await page
      .getByRole('alert')
      .getByText('says serial number Q26C49077, the device has Q26C49070')
      .waitFor();
    await page.getByRole('button', { name: `Take off ${code}` }).click();
    await command('confirm');
    await page.getByRole('button', { name: 'Start inspection' }).waitFor();
  }, 120_000);

  test('that is damaged says why until the next scan, and a code that is found opens its device', async () => {
    const { page, scan } = await signedInWindow();
    await scan(`(01)09520000000043(21)Q26C49077`);
    const dialog = page.getByRole('dialog');
    await dialog.getByText('is 3 and should be 2: a digit was misread or mistyped').waitFor();
    await scan('[)>06SQ26C490771PSL-50');
    await dialog.getByText('Set the scanner to send the control characters RS, GS and EOT').waitFor();
    await scan(`]C110${'L'.repeat(25)}`);
    await dialog.getByText('Set the scanner to send FNC1 as the group separator GS').waitFor();
    await scan('XCCANCEL');
    await dialog.waitFor({ state: 'detached' });
    await enter(page, `]C0GJQ81T5WX2`);
    await page.getByRole('heading', { level: 1, name: 'GJQ81-T5WX2' }).waitFor();
  }, 120_000);
});
