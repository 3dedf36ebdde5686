/** Tags that are printed and proved, in a real window: a printer set up, a tag printed by scanner alone, scanned, printed again. */
import { mkdir, readdir } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { demo, demoFolderOfToday } from '../support/station-fixture.ts';
import { type BenchWindow, openBenchWindow } from './bench-window.ts';

const hasReader = requireTool('zbarimg');

/** In service in `demo-data/fleet.json`, with a status tag that was never printed. */
const benchId = 'GJQ81T5WX2';

/** A window on the invented depot, its administrator at the list of printers. */
const openAtPrinters = async (): Promise<BenchWindow> => {
  const window = await openBenchWindow({ folder: await demoFolderOfToday() });
  const { page, scan } = window;
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor();
  await scan(demo.administrator);
  await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('tab', { name: 'Printers' }).click();
  return window;
};

/** What is typed into the form of a new printer, by the label of the field. */
const addPrinter = async (
  { page }: BenchWindow,
  kind: string,
  fields: Readonly<Record<string, string>>,
  unchecked: readonly string[] = [],
): Promise<void> => {
  await page.getByRole('button', { name: 'Add a printer' }).click();
  const form = page.getByRole('form', { name: 'A new printer' });
  await form.getByText(kind, { exact: true }).first().click();
  for (const [label, text] of Object.entries(fields))
    await form.getByRole('textbox', { name: label, exact: true }).fill(text);
  for (const label of unchecked) await form.getByText(label, { exact: true }).click();
  await form.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('tabpanel').getByRole('heading', { name: fields.Name! }).waitFor();
};

/** The inspector scans the badge and the device, and opens its tag. */
const openTag = async ({ page, scan }: BenchWindow): Promise<void> => {
  await scan(demo.inspector);
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
  await scan(benchId);
  await page.getByText('Tag 2: not printed yet').waitFor();
  await page.getByRole('button', { name: 'Open the tag' }).click();
};

const filesIn = async (folder: string, ending: string): Promise<readonly string[]> =>
  (await readdir(folder)).filter((name) => name.endsWith(ending));

/** What zbar reads in the square symbol of the first picture in a folder. */
const squareSymbolIn = async (folder: string): Promise<string> => {
  const [picture] = await filesIn(folder, '.png');
  const texts = runTool('zbarimg', ['--raw', '-q', join(folder, picture!)])
    .trim()
    .split('\n');
  return texts.find((text) => text.startsWith('SRL '))!;
};

/** An address on this computer at which nothing listens. */
const addressOfNobody = async (): Promise<string> => {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise<void>((resolve) => server.close(() => resolve()));
  return `127.0.0.1:${typeof address === 'object' ? address?.port : ''}`;
};

describe.runIf(hasBrowser() && hasReader)('printing in the window', () => {
  test('a printed tag counts as applied once it was scanned, and is printed again only with a reason', async () => {
    const window = await openAtPrinters();
    const { page, scan, command } = window;
    const folder = join(window.folder, 'print-folder');
    await mkdir(folder);
    await addPrinter(window, 'Folder', { Name: 'Tag folder', Folder: folder });
    await page.getByRole('button', { name: 'Check: Tag folder' }).click();
    await page.getByText('Ready', { exact: true }).waitFor();

    await openTag(window);
    await page.getByRole('button', { name: 'Print on Tag folder' }).waitFor();
    await command('confirm');
    await page.getByText('Printed on Tag folder.').waitFor();
    await page.getByText('Fix it to the device, then scan it once.').waitFor();
    expect(await filesIn(folder, '.pdf')).toHaveLength(1);

    await page.getByRole('link', { name: 'Start' }).click();
    await page.getByRole('link', { name: '1 Tags not yet scanned' }).click();
    await page.getByText('1 device', { exact: true }).waitFor();
    await page.getByRole('link', { name: 'GJQ81-T5WX2' }).waitFor();
    await scan(benchId);
    await page.getByText('Tag 2: printed, not yet scanned').waitFor();

    await scan(await squareSymbolIn(folder));
    await page.getByText(/^Tag 2: applied on \d{1,2} \w{3} \d{4}$/).waitFor();
    await page.getByRole('link', { name: 'Start' }).click();
    await page.getByRole('link', { name: '0 Tags not yet scanned' }).waitFor();

    await scan(benchId);
    await page.getByRole('button', { name: 'Open the tag' }).click();
    await page.getByRole('button', { name: 'Print again on Tag folder' }).waitFor();
    await command('1');
    await page.getByRole('dialog', { name: 'Print tag 2 once more?' }).waitFor();
    expect(await filesIn(folder, '.pdf')).toHaveLength(1);
    await command('4');
    await page.getByText('Printed on Tag folder.').waitFor();
    expect(await filesIn(folder, '.pdf')).toHaveLength(2);
  }, 120_000);

  test('a printer that is not there is said in one sentence, and the tag comes out of another one', async () => {
    const window = await openAtPrinters();
    const { page, scan, command } = window;
    const folder = join(window.folder, 'print-folder');
    await mkdir(folder);
    const nobody = await addressOfNobody();
    await addPrinter(window, 'Network printer', { Name: 'Hall', 'Address of the printer': nobody });
    const none = ['Status tags', 'Quarantine tags', 'ID labels'];
    await addPrinter(window, 'Folder', { Name: 'Tag folder', Folder: folder }, none);

    await openTag(window);
    await page.getByRole('button', { name: 'Print on Hall' }).waitFor();
    await command('confirm');
    const said = page.getByRole('alert').filter({ hasText: 'Hall does not answer at' });
    await said.waitFor();
    expect(await said.count()).toBe(1);
    await page.getByText('Print it, fix it to the device, then scan it once.').waitFor();
    await page.getByRole('button', { name: 'Try again on Hall' }).waitFor();

    await command('2');
    await page.getByText('Printed on Tag folder.').waitFor();
    expect(await filesIn(folder, '.pdf')).toHaveLength(1);
    await scan(benchId);
    await page.getByText('Scan the square symbol too').waitFor();
    await scan(await squareSymbolIn(folder));
    await page.getByText(/^Applied on \d{1,2} \w{3} \d{4}: tag 2 was scanned and reads\.$/).waitFor();
  }, 120_000);
});
