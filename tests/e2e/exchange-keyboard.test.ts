/** A fleet comes in by keyboard alone: the list is chosen, its questions answered, and it is imported. */
import { expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { Keyboard } from './keyboard.ts';

const list = `Maker,Model,Serial,Made,Length,Last inspection,Result
Norvane,Lode 6,N6-KEY-1,2023-02,6,03/04/2025,pass
Norvane,Lode 6,N6-KEY-2,2023-02,6,05/04/2025,fail
`;

test.runIf(hasBrowser())(
  'a fleet is imported by keyboard alone',
  async () => {
    const { page } = await openBenchWindow();
    page.setDefaultTimeout(10_000);
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));

    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await keyboard.shortcut('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
    await keyboard.tabTo(/^input: Scan field/);
    await keyboard.type(demo.inspector);
    await keyboard.press('Enter');
    await page.getByRole('banner').getByText('Teo Arandal').waitFor();
    await keyboard.tabTo(/^a: Setup/);
    await keyboard.press('Enter');
    await keyboard.tabTo(/^tab: People/);
    for (let tab = 0; tab < 6; tab += 1) await keyboard.press('ArrowRight');

    await keyboard.tabTo(/^button: Choose a list/);
    const chooser = page.waitForEvent('filechooser');
    await keyboard.press('Enter');
    await (await chooser).setFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(list) });
    await page.getByRole('heading', { name: 'Answer these before the import' }).waitFor();

    await keyboard.tabTo(/^input: m/);
    await keyboard.press(' ');
    await expect.poll(() => page.getByText('In which unit').count()).toBe(0);
    await keyboard.tabTo(/^input: day, month, year/);
    await keyboard.press(' ');
    await page.getByRole('button', { name: 'Import 2 devices' }).waitFor();
    await keyboard.tabTo(/^button: Import 2 devices/);
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: '2 devices are in the register' }).waitFor();
    await expect.poll(() => keyboard.focused()).toMatch(/^section: /);

    await keyboard.tabTo(/^button: See the devices never inspected/);
    await keyboard.press('Enter');
    await page.getByRole('row').filter({ hasText: 'N6-KEY-1' }).waitFor();
  },
  120_000,
);
