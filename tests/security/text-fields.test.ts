/** Script in every text that a person can fill: text on every screen, in every paper, table and calendar, and run nowhere. */
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { unpackWorkbook } from '../../src/intake/table/unpack-workbook.ts';
import { badges, pin } from '../e2e/prepared-depot.ts';
import { launchBrowser, openStage, type Stage } from '../e2e/stage.ts';
import { hasBrowser } from '../support/browser.ts';
import { canReadPdf, madeReport, textOf } from '../support/report-text.ts';
import { hostileCaller, script, writtenTexts } from './hostile-caller.ts';
import { type HostileDepot, hostileDepot } from './hostile-depot.ts';
import { designation } from './hostile-words.ts';

let browser: Browser | undefined;
let stage: Stage;
let folder: string;
let depot: HostileDepot;

/** Every place of the window, with what there is to see there; of devices those whose words were written here, and each sixth. */
const places = async (): Promise<readonly string[]> => {
  const { devices } = await stage.expectOutput('device.list', { limit: 100 });
  const { people } = await stage.expectOutput('person.list', {});
  const { notices } = await stage.expectOutput('notice.list', {});
  const { batches } = await stage.expectOutput('return-batch.list', {});
  const seen = devices.filter(({ serial }, index) => index % 6 === 0 || /^(?:WORDS|HELD)-/.test(serial));
  const ofDevice = seen.flatMap(({ benchId }) => [
    ...['device', 'lifeline', 'held', 'corrections', 'relabel', 'desk'].map((name) => `${name}/${benchId}`),
    ...['status', 'quarantine', 'id'].map((kind) => `tag/${benchId}/${kind}`),
  ]);
  const { inspections, identityCases } = depot.depot;
  return [
    ...['', 'register', 'register?show=held', 'new-device', 'bench', 'who', 'markings', 'held', 'returns'],
    ...['returns-plan', 'returns-plan/data', 'desk', 'custody', 'kits', 'limits', 'reinspections', 'count'],
    ...['count/CAGE2', 'notices', 'notices/new', 'schedule', 'records', 'insight', 'setup'],
    ...['people', 'models', 'program', 'station', 'printers', 'exchange', 'keeping'].map(
      (name) => `setup/${name}`,
    ),
    ...batches.map(({ number }) => `returns/${number}`),
    ...notices.map(({ notice }) => `notices/${notice}`),
    ...Object.values(inspections).map((inspection) => `bench/${inspection}`),
    ...Object.values(identityCases).map((identityCase) => `who/${identityCase}`),
    ...people.map(({ personId }) => `person/${personId}`),
    `records/${inspections.signed}`,
    ...ofDevice,
  ].map((name) => `#/${name}`);
};

describe.runIf(hasBrowser())('script in every text that a person can fill', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'srl-bench-text-'));
    browser = await launchBrowser();
    stage = await openStage(browser, folder);
    depot = await hostileDepot(stage);
    await stage.expectOutput('session.sign-in', { badge: badges.administrator });
  }, 240_000);

  afterAll(async () => {
    await browser?.close();
    await stage?.close();
    if (folder !== undefined) await rm(folder, { recursive: true, force: true });
  });

  test('is filled in wherever the contract has a text that a person writes', () => {
    const other = writtenTexts().filter(
      (text) => !depot.filled.has(text) && !text.startsWith('station.setup '),
    );
    // The manufacturer of a model sheet, which is filled there.
    expect(other).toEqual([
      'model-sheet.set-contact manufacturer',
      'returns-basis.record change.manufacturer',
    ]);
  });

  test('is text and runs nothing on every screen', async () => {
    const { page, close } = await stage.openWindow({
      language: 'en',
      theme: 'light',
      width: 1366,
      height: 768,
    });
    page.setDefaultTimeout(20_000);
    const asked: string[] = [];
    page.on('dialog', (dialog) => {
      asked.push(dialog.message());
      void dialog.dismiss();
    });
    const elsewhere: string[] = [];
    page.on('request', (request) => {
      const { origin, pathname } = new URL(request.url());
      if (request.url().startsWith('http') && (origin !== new URL(page.url()).origin || pathname === '/x'))
        elsewhere.push(request.url());
    });
    const field = page.getByRole('banner').getByRole('textbox');
    await field.fill(badges.administrator);
    await field.press('Enter');
    await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
    let seen = 0;
    for (const hash of await places()) {
      await page.evaluate((next) => {
        window.location.hash = next;
      }, hash);
      await page.waitForTimeout(150);
      const found = await page.evaluate(() => ({
        ran: 'ran' in window,
        elements: document.querySelectorAll('#ran, img[src="x"], [onerror], main script').length,
        text: document.body.textContent ?? '',
      }));
      expect.soft(found.ran, hash).toBe(false);
      expect.soft(found.elements, hash).toBe(0);
      if (found.text.includes(script)) seen += 1;
    }
    expect(asked).toEqual([]);
    expect(elsewhere).toEqual([]);
    expect(seen).toBeGreaterThan(60);
    await close();
  }, 240_000);

  test('is text where a station is set up with it', async () => {
    const own = await openStage(browser!, join(folder, 'set-up'));
    const filled = new Set<string>();
    const administrator = {
      name: 'Ilse Marrowby',
      badge: badges.administrator,
      pin,
      designation,
    };
    const station = { name: 'Harrow Point', timeZone: 'Europe/Madrid', lengthUnit: 'm' as const };
    await hostileCaller(own, filled)('station.setup', { ...station, administrator });
    expect([...filled].sort()).toEqual(
      writtenTexts()
        .filter((text) => text.startsWith('station.setup '))
        .sort(),
    );
    const { page, close } = await own.openWindow({
      language: 'en',
      theme: 'light',
      width: 1366,
      height: 768,
    });
    await page.getByRole('banner').getByText(`Harrow Point${script}`).waitFor();
    expect(await page.evaluate(() => 'ran' in window)).toBe(false);
    await close();
    await own.close();
  }, 120_000);

  test.runIf(canReadPdf)(
    'stands in a paper as text, and the paper carries no action, no script and no link of it',
    async () => {
      const { devices } = await stage.expectOutput('device.list', { search: 'WORDS', limit: 5 });
      const language = 'both' as const;
      let withScript = 0;
      for (const of of [
        ...devices.map(({ benchId }) => ({ kind: 'device' as const, benchId })),
        { kind: 'inspection' as const, inspection: depot.depot.inspections.signed },
        { kind: 'register' as const },
      ]) {
        const { path } = await madeReport(stage, { of, language } as never);
        const bytes = (await readFile(path)).toString('latin1');
        expect(bytes).not.toMatch(/\/(?:JS|JavaScript|OpenAction|AA|Launch|URI|SubmitForm|EmbeddedFile)\b/);
        if (textOf(path).replaceAll(' ', '').includes(script.replaceAll(' ', ''))) withScript += 1;
      }
      expect(devices.length).toBeGreaterThan(2);
      expect(withScript).toBeGreaterThan(devices.length);
    },
    120_000,
  );

  test('is made harmless in CSV where it would be computed, and everything else is as it was', async () => {
    const { job } = await stage.expectOutput('record.export', { folder: join(folder, 'out') });
    for (let state = 'working'; state === 'working'; ) {
      ({ state } = await stage.expectOutput('export.status', { job }));
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    const files = (await readdir(join(folder, 'out'))).filter((name) => name.endsWith('.csv'));
    const cells = (
      await Promise.all(
        files.map(async (name) =>
          parse((await readFile(join(folder, 'out', name))).toString('utf8'), { bom: true }),
        ),
      )
    ).flat(2) as string[];
    expect(files.length).toBeGreaterThan(5);
    expect(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([]);
    for (const name of ['=1+1', '+1', '-1', '@SUM(1)', '=cmd|x']) expect(cells).toContain(`'${name}`);
    expect(cells.some((cell) => cell.includes(script))).toBe(true);
  }, 120_000);

  test('is a text in a workbook, never a formula', async () => {
    const made = await madeReport(stage, {
      of: { kind: 'register' },
      format: 'xlsx',
      language: 'en',
    } as never);
    const parts = await unpackWorkbook(await readFile(made.path));
    const sheets = [...parts]
      .filter(([path]) => path.includes('worksheets/'))
      .map(([, part]) => part.toString());
    expect(sheets.length).toBeGreaterThan(0);
    for (const sheet of sheets) expect(sheet).not.toMatch(/<f[ >]|<script|<img/);
    for (const path of parts.keys()) expect(path).not.toMatch(/vba|externalLink|\.bin$/);
  });

  test('breaks no line of a calendar', async () => {
    const made = await madeReport(stage, {
      of: { kind: 'bench-plan' },
      format: 'ics',
      language: 'en',
    } as never);
    const text = await readFile(made.path, 'utf8');
    for (const line of text.split('\r\n')) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).toMatch(/^(?:[A-Z-]+[:;]| |$)/);
    }
    expect(text.match(/BEGIN:VCALENDAR/g)).toHaveLength(1);
  }, 120_000);
});
