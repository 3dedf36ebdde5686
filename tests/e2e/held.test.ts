/** Held devices in a real window: from a check-in that reports a fall to the next check-out, and to scrap. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { type DeskCrew, openDesk } from './desk-crew.ts';
import { samplePdf, samplePhoto } from './held-depot.ts';

const go = (page: Page, hash: string) =>
  page.evaluate((next) => {
    window.location.hash = next;
  }, hash);

/** A question takes an answer only once it stands there to be read. */
const isAsked = (page: Page): Promise<void> => page.getByText('Answer.', { exact: true }).waitFor();

const heading = (page: Page, text: RegExp) => page.getByRole('heading', { level: 1, name: text }).waitFor();

const step = (page: Page, text: string) => page.getByRole('main').getByText(text, { exact: true }).waitFor();

/** The button of that name, whether or not it has a digit of the command sheet before it. */
const press = (page: Page, name: string) =>
  page.getByRole('button', { name: new RegExp(`^(?:\\d\\s*)?${name}$`) }).click();

const chooseDate = async (page: Page, label: string, date: string): Promise<void> => {
  const [year = '', month = '', day = ''] = date.split('-');
  for (const [part, value] of [
    ['Year', year],
    ['Month', month],
    ['Day', day],
  ] as const)
    await page.getByLabel(`${label}: ${part}`).selectOption(value);
};

const signInAs = async ({ window: { page, scan } }: DeskCrew, badge: string, name: string): Promise<void> => {
  await scan(badge);
  await page.getByRole('banner').getByText(name).waitFor();
};

/** As at a check-in on which the user says that it stopped a fall. */
const reportFall = async (crew: DeskCrew, benchId: BenchId): Promise<void> => {
  const { page, scan, command } = crew.window;
  const answer = async (number: string): Promise<void> => {
    await isAsked(page);
    await command(number);
  };
  await crew.ask('custody.check-out', { userId: 'P006', benchIds: [benchId], preUse: { language: 'en' } });
  await go(page, '#/desk');
  await heading(page, /Scan a badge/);
  await scan(benchId);
  await heading(page, /stop a fall/);
  await answer('2');
  await page.getByText('What was it?').waitFor();
  await answer('1');
  await command('confirm');
  await heading(page, /hot work/);
  await answer('1');
  await heading(page, /questionable/);
  await answer('1');
  await heading(page, /Out of service/);
};

/** Gives the tag out as the printer would take it, scans it where it hangs, and returns what its symbol says. */
const hangTag = async (
  { ask, window: { scan } }: DeskCrew,
  benchId: BenchId,
  kind: string,
): Promise<string> => {
  const { symbols } = await ask<{ symbols: readonly { text: string }[] }>('tag.issue', { benchId, kind });
  const { text } = symbols.find((each) => each.text.startsWith('SRL '))!;
  await scan(text);
  return text;
};

describe.runIf(hasBrowser())('a device that reports a fall at check-in', () => {
  test('is held, tagged, investigated, sent away, certified, released, inspected and goes out again; a window that is closed on the way changes nothing', async () => {
    const crew = await openDesk();
    const { page, scan, command } = crew.window;
    const benchId = crew.ready[0]!;
    await reportFall(crew, benchId);
    const openHeld = async (): Promise<void> => {
      await go(page, '#/');
      await go(page, `#/held/${benchId}`);
      await page.getByRole('heading', { name: 'Next step' }).waitFor();
    };
    await openHeld();
    await step(page, 'Print, hang and scan its quarantine tag');
    const tag = await hangTag(crew, benchId, 'quarantine');
    await openHeld();
    await step(page, 'Open its fall case');
    await command('confirm');
    const today = (await crew.ask<{ today: string }>('station.status')).today;
    await chooseDate(page, 'Day of the fall', today);
    await scan(demo.user);
    await page.getByLabel('Job').fill('Gantry 4');
    await page.getByText('Deployed', { exact: true }).click();
    await page.getByLabel('Who was told').fill('Head of depot');
    await page.getByLabel('Number of the sealed bag').fill('B-17');
    await press(page, 'Save');
    await step(page, 'Close its fall case with the findings');
    await page.reload();
    await step(page, 'Close its fall case with the findings');
    await page.getByRole('main').getByText('Gantry 4').waitFor();
    await signInAs(crew, demo.administrator, 'Ilse Marrowby');
    await openHeld();
    await press(page, 'Close the fall case…');
    await page.getByLabel('What the investigation found').fill('A slip on a wet rung.');
    await press(page, 'Save');
    await step(page, 'Get and record the missing evidence');
    await signInAs(crew, demo.attendant, 'Bram Kestrin');
    await openHeld();
    await press(page, 'Into a return batch…');
    await page.getByRole('dialog').getByRole('listitem').first().waitFor();
    await command('confirm');
    await press(page, 'Ship the batch…');
    await page.getByLabel('Carrier').fill('Harrow Freight');
    await chooseDate(page, 'Ask the manufacturer on', today);
    await page.getByLabel('Condition of the devices').fill('Arrested a fall.');
    await page.getByText('None known', { exact: true }).click();
    await press(page, 'Save');
    await step(page, 'On its way');
    await page.reload();
    await step(page, 'On its way');
    await scan(benchId);
    await page.getByText('Repaired', { exact: true }).click();
    await page.getByLabel('Number of the certificate').fill('R-2088');
    await chooseDate(page, 'Date on the certificate', today);
    await press(page, 'Save');
    await step(page, 'Get and record the missing evidence');
    await press(page, 'Record evidence…');
    await page.getByLabel('Number of the certificate').fill('R-2088');
    await chooseDate(page, 'Date on the certificate', today);
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'R-2088.pdf', mimeType: 'application/pdf', buffer: await samplePdf() });
    await page.getByText('Take R-2088.pdf off').waitFor();
    await press(page, 'Save');
    await step(page, 'Scan its quarantine tag back in');
    await page.reload();
    await step(page, 'Scan its quarantine tag back in');
    await command('confirm');
    await page.getByRole('dialog').waitFor();
    await scan(benchId);
    await page
      .getByRole('dialog')
      .getByText(/That is no quarantine tag/)
      .waitFor();
    await scan(tag);
    await step(page, 'Inspect it anew at the bench');
    await signInAs(crew, demo.inspector, 'Teo Arandal');
    await go(page, `#/device/${benchId}`);
    await page.getByRole('button', { name: 'Start inspection' }).waitFor();
    await command('confirm');
    await page.getByRole('dialog').waitFor();
    await command('confirm');
    const progress = (await page.getByText(/^Check 1 of \d+/).textContent()) ?? '';
    const checks = Number(/of (\d+)/.exec(progress)?.[1]);
    expect(checks).toBeGreaterThan(30);
    for (let check = 1; check <= checks; check += 1) {
      await page.getByText(`Check ${check} of ${checks}`).waitFor();
      await command('good');
    }
    await page.getByText('PASS', { exact: true }).waitFor();
    await command(...demo.pin, 'confirm');
    await page.getByRole('button', { name: 'Open for printing' }).waitFor();
    await hangTag(crew, benchId, 'status');
    await signInAs(crew, demo.attendant, 'Bram Kestrin');
    await go(page, '#/desk');
    await heading(page, /Scan a badge/);
    await scan(demo.user);
    await heading(page, /Nadia Solheim/);
    await scan(benchId);
    await page.getByRole('main').getByText('Leave here').waitFor();
    await command('confirm');
    await heading(page, /Next badge/);
    expect(await crew.ask('device.show', { benchId })).toMatchObject({
      device: { standing: 'in service', reasons: [], heldBy: 'Nadia Solheim' },
    });
  }, 400_000);

  test('is scrapped before a witness, and no screen brings it back', async () => {
    const crew = await openDesk();
    const { page, scan, command } = crew.window;
    const benchId = crew.held;
    await go(page, `#/held/${benchId}`);
    await page.getByRole('heading', { name: 'Why it is held' }).waitFor();
    await press(page, 'Scrap…');
    await page.getByText('The lifeline is cut through').click();
    await page.getByText('The manufacturer’s marking is made unreadable').click();
    await scan(demo.user);
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'cut.jpg', mimeType: 'image/jpeg', buffer: await samplePhoto() });
    await page.getByText('Take cut.jpg off').waitFor();
    await press(page, 'Scrap it for good');
    await page.getByText(/That is final/).waitFor();
    for (const name of ['Record evidence…', 'Into a return batch…', 'Scrap…'])
      expect(await page.getByRole('button', { name }).count()).toBe(0);
    await command('confirm');
    expect(await page.getByRole('dialog').count()).toBe(0);
    await go(page, '#/');
    await scan(benchId);
    await page.getByText('Scrapped: never use again').waitFor();
    await command('confirm');
    expect(await page.getByRole('button', { name: 'Start inspection' }).count()).toBe(0);
    await go(page, '#/desk');
    await scan(demo.user);
    await heading(page, /Nadia Solheim/);
    await scan(benchId);
    await page.getByText('It stays here', { exact: true }).waitFor();
    expect(await crew.ask('device.show', { benchId })).toMatchObject({ device: { standing: 'scrapped' } });
  }, 240_000);
});
