/** The main job, end to end, in a real window: a new device by its maker's barcode, every check, the signature, the tag. */
import { mkdir, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { procedure } from '../support/shipped-rules.ts';
import { demo } from '../support/station-fixture.ts';
import { type BenchWindow, openBenchWindow } from './bench-window.ts';

const tools = [requireTool('pdftoppm'), requireTool('zbarimg')].every(Boolean);

/** Loads the demo on the first start, signs in by badge, and registers a device that the station does not know. */
const registerNewDevice = async (
  { page, scan, command }: BenchWindow,
  code: string,
  serial: string,
): Promise<string> => {
  await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
  await page.keyboard.press('1');
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
  await scan(demo.inspector);
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
  await scan(code);
  await page.getByRole('dialog').getByText(code).waitFor();
  await command('1');
  await page.getByRole('heading', { name: 'Register a device' }).waitFor();
  await page.getByRole('button', { name: /Stayline 50 ft/ }).click();
  await page.getByLabel('What it says: Serial number').fill(serial);
  await page.getByLabel('What it says: Date of manufacture').fill('2026-05');
  await command('1', '1', '1', '1', '1', '1', '1', '1', '1', 'next');
  await page.getByRole('main').getByText(code).waitFor();
  await page.getByRole('button', { name: 'Register the device' }).click();
  await page.getByRole('button', { name: 'Start inspection' }).waitFor();
  return ((await page.getByRole('heading', { level: 1 }).textContent()) ?? '').replace('-', '');
};

/** Walks every check by scanner alone. `findings` says, by check key, which symbols answer it instead of Good. */
const walk = async (
  { page, command }: BenchWindow,
  findings: Readonly<Record<string, readonly string[]>>,
): Promise<void> => {
  await command('confirm');
  await page.getByRole('dialog').getByText('Let the lifeline retract under control.').waitFor();
  await command('confirm');
  for (const [index, check] of procedure.checks.entries()) {
    await page.getByText(`Check ${index + 1} of ${procedure.checks.length}`).waitFor();
    await page.getByRole('heading', { name: check.title.en, exact: true }).waitFor();
    await command(...(findings[check.key] ?? ['good']));
  }
};

const sign = async ({ command }: BenchWindow): Promise<void> => command(...demo.pin, 'confirm');

/** What zbar reads on the tag's PDF, rasterised by poppler at 300 dots per inch: the bench ID, then the words of the tag. */
const symbolsOnPaper = async (folder: string): Promise<readonly string[]> => {
  const pdf = (await readdir(join(folder, 'tags'))).find((name) => name.endsWith('.pdf'))!;
  const pages = join(folder, 'rasterised');
  await mkdir(pages);
  runTool('pdftoppm', ['-r', '300', '-png', join(folder, 'tags', pdf), join(pages, 'tag')]);
  const [picture] = await readdir(pages);
  return runTool('zbarimg', ['--raw', '-q', join(pages, picture!)])
    .trim()
    .split('\n')
    .sort((a, b) => a.length - b.length);
};

describe.runIf(hasBrowser() && tools)('the main job in the window', () => {
  test('with three findings ends with all three reasons on the verdict page and on the quarantine tag', async () => {
    const window = await openBenchWindow();
    const { page, command } = window;
    const benchId = await registerNewDevice(window, 'QM152699771', 'Q26C99771');
    await walk(window, {
      'marking.dateOfManufacture': ['2'],
      'lifeline.shape': ['defect', '1', '3', 'point', '2', 'confirm', 'confirm'],
      'brake.near-full-payout': ['defect', '1', 'confirm'],
    });
    await page.getByText('REMOVE FROM SERVICE').waitFor();
    const reasons = [
      'Date of manufacture illegible on the manufacturer’s marking.',
      'Lifeline crushed at 3.2 m from the hook.',
      'Brake slow to engage near full payout.',
    ];
    for (const reason of reasons) await page.getByText(reason).first().waitFor();
    await sign(window);
    await page.getByRole('heading', { name: 'Out of service: lock it away' }).waitFor();
    await page.getByRole('button', { name: 'Open for printing' }).waitFor();
    await command('confirm');
    await page.getByText(`${benchId}-tag-1-quarantine.pdf`).waitFor();
    expect(await symbolsOnPaper(window.folder)).toEqual([
      benchId,
      expect.stringMatching(new RegExp(`^SRL \\w{4} ${benchId} TAG1 REMOVED \\d{8} \\w{8}$`)),
    ]);
    const pdf = join(window.folder, 'tags', `${benchId}-tag-1-quarantine.pdf`);
    const words = runTool('pdftotext', ['-layout', pdf, '-']).replaceAll(/\s+/g, ' ');
    for (const reason of reasons) expect(words).toContain(reason);
    expect(words).toContain('Cable aplastado a 3,2 m del gancho.');
  }, 240_000);

  test('with nothing found ends with the status tag and the next due date, and survives a reload half way', async () => {
    const window = await openBenchWindow();
    const { page, command } = window;
    const benchId = await registerNewDevice(window, 'QM152699772', 'Q26C99772');
    await command('confirm');
    await page.getByRole('dialog').waitFor();
    await command('confirm');
    await page.getByText('Check 1 of 36').waitFor();
    await command('good', 'good', 'good');
    await page.getByText('Check 4 of 36').waitFor();
    await page.reload();
    await page.getByText('Check 4 of 36').waitFor();
    for (let check = 4; check <= procedure.checks.length; check += 1) {
      await page.getByText(`Check ${check} of ${procedure.checks.length}`).waitFor();
      await command('good');
    }
    await page.getByText('PASS', { exact: true }).waitFor();
    await sign(window);
    const year = new Date().getFullYear() + 1;
    await page.getByRole('button', { name: 'Open for printing' }).waitFor();
    await page
      .getByRole('main')
      .getByText(new RegExp(`^\\d{1,2} \\w{3} ${year}$`))
      .waitFor();
    await command('confirm');
    await page.getByText(`${benchId}-tag-1-status.pdf`).waitFor();
    expect(await symbolsOnPaper(window.folder)).toEqual([
      benchId,
      expect.stringMatching(new RegExp(`^SRL \\w{4} ${benchId} TAG1 PASS \\d{8} DUE ${year}\\d{4} \\w{8}$`)),
    ]);
  }, 240_000);
});
