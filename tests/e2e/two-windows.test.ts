/** Two windows at one station, the desk and the bench: in step within a second, and one of them wins. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openDesk, secondUser } from './desk-crew.ts';
import { WedgeScanner } from './wedge-scanner.ts';

/** A further window of the same station, where the attendant signs in too. */
const another = async (page: Page, hash: string): Promise<{ page: Page; scanner: WedgeScanner }> => {
  const other = await page.context().newPage();
  await other.goto(page.url());
  const scanner = new WedgeScanner(other, await page.context().newCDPSession(other));
  await other.getByRole('banner').waitFor();
  await other.evaluate((next) => {
    window.location.hash = next;
  }, hash);
  return { page: other, scanner };
};

describe.skipIf(!hasBrowser)('two windows at one station', () => {
  test('stay in step within a second, and of two that take the same device one is told who has it', async () => {
    const { window: desk, ready } = await openDesk();
    const { page, scan, command } = desk;
    const [one, two] = ready as readonly string[] as [string, string];
    await page.evaluate(() => {
      window.location.hash = '#/desk';
    });
    await page.getByRole('heading', { name: /Scan a badge/ }).waitFor();
    const card = await another(page, `#/device/${one}`);
    const second = await another(page, '#/desk');
    await second.page.getByRole('heading', { name: /Scan a badge/ }).waitFor();
    const out = second.page.getByRole('button', { name: /^Out:/ });

    const before = Number((await out.textContent())?.replace(/\D/g, ''));
    await scan(demo.user);
    await scan(one);
    await page
      .getByRole('listitem')
      .filter({ hasText: one.slice(5) })
      .waitFor();
    await second.scanner.scan(secondUser);
    await second.scanner.scan(one);
    await second.scanner.scan(two);
    await second.page.getByRole('button', { name: /I inspected all 2/ }).waitFor();

    await command('confirm');
    await page.getByRole('heading', { name: /Next badge/ }).waitFor();
    await expect.poll(() => out.textContent(), { timeout: 1_000 }).toContain(String(before + 1));

    await second.scanner.scan('XCCONFIRM');
    const told = second.page.getByRole('heading', { level: 1, name: /is out to Nadia Solheim/ });
    await told.waitFor();
    await expect
      .poll(() => card.page.getByRole('main').getByText('Nadia Solheim').count(), { timeout: 5_000 })
      .toBeGreaterThan(0);
  }, 120_000);
});
