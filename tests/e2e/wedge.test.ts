/** The scanner that types like a keyboard, in a real window: fast and slow, in the middle of typing, set to another layout, taught. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { learningText } from '../../src/domain/scanner/learn-scanner.ts';
import { hasBrowser } from '../support/browser.ts';
import { demo, demoFolderOfToday } from '../support/station-fixture.ts';
import { type BenchWindow, openBenchWindow } from './bench-window.ts';
import type { ScannerSetting } from './wedge-scanner.ts';

/** In service in `demo-data/fleet.json`. */
const benchId = 'GJQ81T5WX2';

/** Article number of the Stayline 50 ft of the invented depot; GS1 keeps 952 for demonstrations. */
const gtin = '09520000000042';

const openDepot = async (): Promise<BenchWindow> => {
  const window = await openBenchWindow({ folder: await demoFolderOfToday() });
  await window.page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor();
  return window;
};

const signedIn = (page: Page, name: string) => page.getByRole('banner').getByText(name).waitFor();

const scanField = (page: Page) =>
  page.getByRole('textbox', { name: 'Scan field: scan, or type and press Enter' });

const notice = (page: Page) => page.getByRole('banner').getByRole('status');

const openScannerSetup = async ({ page, scan }: BenchWindow): Promise<void> => {
  await scan(demo.inspector);
  await signedIn(page, 'Teo Arandal');
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('tab', { name: 'Scanner' }).click();
};

const teach = async ({ page, scanner }: BenchWindow, setting: ScannerSetting): Promise<void> => {
  await page.getByRole('button', { name: /^Teach/ }).click();
  await page.getByRole('img', { name: `Bar code with the text ${learningText}` }).waitFor();
  for (let scans = 1; scans <= 3; scans += 1) {
    await scanner.type(learningText, setting);
    if (scans < 3) await page.getByText(`${scans} of 3 scans`).waitFor();
  }
};

describe.runIf(hasBrowser())('a scanner that types', () => {
  test('is understood at 2 to 60 ms a character, with Enter and with Tab', async () => {
    const { page, scanner } = await openDepot();
    const badges = [
      [demo.inspector, 'Teo Arandal'],
      [demo.administrator, 'Ilse Marrowby'],
    ] as const;
    for (const [index, gapMs] of [2, 3, 5, 8, 12, 20, 35, 45, 60].entries()) {
      const [badge, name] = badges[index % 2]!;
      await scanner.scan(badge, { gapMs, end: index % 3 === 0 ? 'Tab' : 'Enter' });
      await signedIn(page, name);
    }
  }, 120_000);

  test('leaves what a person types in a field, before it and after it, at any pace of both', async () => {
    const { page, scanner } = await openDepot();
    await scanner.scan(demo.inspector);
    await signedIn(page, 'Teo Arandal');
    for (const gapMs of [2, 10, 35, 60]) {
      await page.getByRole('link', { name: 'Register' }).click();
      const search = page.getByRole('searchbox');
      await search.fill('');
      await search.focus();
      await scanner.typeAsPerson('Quill', 80);
      await scanner.scan(benchId, { gapMs });
      await page.getByText('Tag 2: not printed yet').waitFor();
      await page.getByRole('link', { name: 'Register' }).click();
    }
    await scanField(page).focus();
    await scanner.typeAsPerson('Quill', 80);
    await scanner.scan(demo.administrator, { gapMs: 45 });
    await signedIn(page, 'Ilse Marrowby');
    expect(await scanField(page).inputValue()).toBe('Quill');
    await scanner.typeAsPerson('moor', 80);
    expect(await scanField(page).inputValue()).toBe('Quillmoor');
  }, 120_000);

  test('does not take what a very fast person typed: the station does not know it, and it stays in the field', async () => {
    const { page, scanner } = await openDepot();
    await scanField(page).focus();
    await scanner.type('turbine', { gapMs: 60 });
    await scanner.settle();
    expect(await scanField(page).inputValue()).toBe('turbine');
    expect(await page.getByRole('dialog').count()).toBe(0);
  }, 120_000);

  test('that is set to the US layout on a Spanish computer is understood, and the fault is explained', async () => {
    const { page, scanner, command } = await openDepot();
    await scanner.scan(demo.inspector);
    await signedIn(page, 'Teo Arandal');
    await scanner.scan('N2-18-1074', { layout: 'us', computer: 'es' });
    await page.getByRole('dialog', { name: 'Is it this device?' }).waitFor();
    await command('cancel');
    await notice(page).getByText('The scanner types for another keyboard layout').waitFor();
    await page.getByRole('button', { name: 'Understood' }).click();
    await expect.poll(() => notice(page).textContent()).toBe('');
  }, 120_000);

  test('that sends no end is explained, and understood once it was taught', async () => {
    const window = await openDepot();
    const { page, scanner } = window;
    await page.getByRole('heading', { level: 1 }).first().click();
    await scanner.type(demo.inspector.padEnd(8, '0'), { end: 'none' });
    await notice(page).getByText('sends no Enter').waitFor();

    await openScannerSetup(window);
    await teach(window, { end: 'none', prefix: '~', layout: 'us' });
    await page.getByText('nothing: a pause ends it').waitFor();
    await page.getByText('“~”').waitFor();
    await scanner.scan(demo.administrator, { end: 'none', prefix: '~' });
    await signedIn(page, 'Ilse Marrowby');
  }, 120_000);

  test('is taught its prefix, suffix and layout from three scans', async () => {
    const window = await openDepot();
    const { page, scanner } = window;
    await openScannerSetup(window);
    const setting = {
      gapMs: 60,
      prefix: '(',
      suffix: '$',
      end: 'Tab',
      layout: 'us',
      computer: 'es',
    } as const;
    await teach(window, setting);
    await page.getByText('a US keyboard').waitFor();
    await page.getByText('This scanner is set to the US layout').waitFor();
    await scanner.scan(demo.administrator, setting);
    await signedIn(page, 'Ilse Marrowby');
    expect(await notice(page).textContent()).toBe('');
    await page.getByRole('button', { name: 'Forget it' }).click();
    await page.getByText('No scanner is taught yet.').waitFor();
  }, 120_000);

  test('that is slower than a person is refused when it is taught, and so is another symbol', async () => {
    const window = await openDepot();
    await openScannerSetup(window);
    await teach(window, { gapMs: 90, layout: 'us' });
    await window.page.getByRole('alert').getByText('leaves 90 ms between two characters').waitFor();
    await window.page.getByText('0 of 3 scans').waitFor();
    for (let scans = 0; scans < 3; scans += 1) await window.scanner.type('HP10031', { layout: 'us' });
    await window.page.getByRole('alert').getByText('does not hold the text of the symbol').waitFor();
    await window.page.keyboard.press('Escape');
  }, 120_000);

  test('sends the separators of a maker’s code as control keys, on both layouts', async () => {
    const { page, scanner, scan, command } = await openDepot();
    await scan(demo.inspector);
    await signedIn(page, 'Teo Arandal');
    for (const computer of ['us', 'es'] as const) {
      await scanner.scan(`]C121Q26C49077\u001d01${gtin}11260300`, { layout: 'us', computer });
      await page.waitForTimeout(1500);
      await page.getByRole('dialog').getByText('serial number Q26C49077').waitFor();
      await command('cancel');
      await scanner.scan('[)>\u001e06\u001dSQ26C49078\u001d1PSL-50\u001e\u0004', { layout: 'us', computer });
      await page.getByRole('dialog').getByText('serial number Q26C49078').waitFor();
      await command('cancel');
    }
  }, 120_000);

  test('may scan on while an answer is being recorded: no scan is lost, none counts for the wrong check', async () => {
    const { page, scanner, scan, command } = await openDepot();
    await scan(demo.inspector);
    await signedIn(page, 'Teo Arandal');
    await scan(benchId);
    await page.getByRole('button', { name: 'Start inspection' }).waitFor();
    await command('confirm');
    await page.getByRole('dialog').waitFor();
    await command('confirm');
    await page.getByText(/^Check 1 of/).waitFor();
    for (let scans = 0; scans < 8; scans += 1) await scanner.type('XCGOOD', { gapMs: 2 });
    await page.getByText(/^Check 9 of/).waitFor();
    await scanner.settle();
    expect(await page.getByText(/^Check 9 of/).count()).toBe(1);
  }, 120_000);

  test('opens the help of each screen, and goes through the tour by what is really done', async () => {
    const { page, scan, command } = await openDepot();
    page.setDefaultTimeout(20_000);
    const help = page.getByRole('dialog');
    const startScreen = page.getByRole('heading', { name: 'Scan a device, or your badge' });
    const stop = (title: string) =>
      page.getByRole('complementary').getByRole('heading', { name: title }).waitFor();
    await command('help');
    await help.getByText('Scan a badge or a device to begin.').waitFor();
    await command('4');
    await stop('Your badge');
    await scan(demo.inspector);
    await stop('The desk');
    await command('desk');
    await stop('A device to the bench');
    await command('start');
    await startScreen.waitFor();
    await scan('4R02SSYNB2');
    await page.getByRole('heading', { name: '4R02S-SYNB2' }).first().waitFor();
    await command('help');
    await help.getByText('One device: its standing').waitFor();
    await command('cancel');
    await help.waitFor({ state: 'detached' });
    await command('confirm');
    await help.waitFor();
    await command('confirm');
    await stop('The walk and its verdict');
    await command('good');
    await stop('The walk and its verdict');
    await command('start');
    await startScreen.waitFor();
    await command('next');
    await stop('The tag');
    await command('back');
    await stop('The walk and its verdict');
    await command('cancel');
    await page.getByRole('complementary').waitFor({ state: 'detached' });
    await page.reload();
    await page.getByRole('button', { name: 'Go on with the tour' }).waitFor();
    await command('help');
    await help.waitFor();
    await command('4');
    await stop('The walk and its verdict');
    await command('next');
    await stop('The tag');
    await command('next');
    await stop('Held devices');
    await command('held');
    await stop('The year of the bench');
    await command('schedule');
    await stop('The record');
    await command('help');
    await help.waitFor();
    await command('1');
    await page.getByRole('heading', { name: 'Cautions and limits' }).waitFor();
    await scan('WHAT-IS-THIS?');
    await page.getByRole('heading', { name: 'Unknown code' }).or(page.getByRole('dialog')).first().waitFor();
    expect(await page.getByText('What works everywhere').count()).toBe(0);
  }, 240_000);
});
