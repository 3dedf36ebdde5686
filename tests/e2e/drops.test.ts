/** Links, pieces of pages and files that are dragged over the window and dropped: a browser opens what a page does not keep out. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { fillWithDemo, temporaryFolder } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';

interface Dragged {
  readonly items: readonly { readonly mimeType: string; readonly data: string }[];
  readonly files: readonly string[];
}

const elsewhere = 'http://elsewhere.invalid/';
const link: Dragged = { items: [{ mimeType: 'text/uri-list', data: elsewhere }], files: [] };
const markup: Dragged = {
  items: [
    { mimeType: 'text/html', data: `<a href="${elsewhere}">A</a><script>document.title = 'ran'</script>` },
    ...link.items,
  ],
  files: [],
};
const file = async (): Promise<Dragged> => {
  const path = join(await temporaryFolder(), 'page.html');
  await writeFile(path, '<!doctype html><title>ran</title>');
  return { items: [], files: [path] };
};

/** Whether the page kept it out, by each event that it was told of; a browser opens it where one says that it did not. */
const keptOut = async (
  page: Page,
  data: Dragged,
  place: { readonly x: number; readonly y: number },
): Promise<readonly string[]> => {
  await page.evaluate(() => {
    const told: string[] = [];
    Object.assign(window, { told });
    for (const kind of ['dragover', 'drop'])
      window.addEventListener(kind, (event) => {
        told.push(`${kind} ${event.defaultPrevented ? 'kept out' : 'opened'}`);
      });
  });
  const session = await page.context().newCDPSession(page);
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
    await session.send('Input.dispatchDragEvent', {
      type,
      ...place,
      data: { items: [...data.items], files: [...data.files], dragOperationsMask: 1 },
    });
  await session.detach();
  await page.waitForFunction(() => (window as unknown as { told: string[] }).told.length > 0);
  const told = await page.evaluate(() => (window as unknown as { told: string[] }).told);
  return [...new Set(told)];
};

/** A window that takes pictures, too. */
const openDepot = async () => {
  const folder = await temporaryFolder();
  await fillWithDemo(folder);
  const window = await openBenchWindow({ folder });
  await window.page.getByRole('banner').getByRole('textbox').waitFor();
  return window;
};

describe.runIf(hasBrowser())('what is dropped on the window', () => {
  test('is opened on a page that keeps nothing out', async () => {
    const window = await openBenchWindow();
    const page = await window.page.context().newPage();
    await page.setContent('<!doctype html><p>A page without a guard.</p>');
    expect(await keptOut(page, link, { x: 200, y: 200 })).toContain('dragover opened');
  }, 60_000);

  test.each([
    ['a link', async () => link],
    ['a piece of a page', async () => markup],
    ['a file', file],
  ])(
    'leads it nowhere: %s',
    async (_what, data) => {
      const { page } = await openBenchWindow();
      const { width, height } = page.viewportSize()!;
      const before = page.url();
      for (const place of [
        { x: width / 2, y: height / 2 },
        { x: 20, y: height - 20 },
      ])
        expect((await keptOut(page, await data(), place)).join(', ')).not.toContain('opened');
      expect(page.url()).toBe(before);
      expect(await page.title()).not.toBe('ran');
      expect(page.context().pages()).toHaveLength(1);
    },
    60_000,
  );

  test('is text in a field', async () => {
    const { page } = await openDepot();
    const field = page.getByRole('banner').getByRole('textbox');
    const { x, y, width, height } = (await field.boundingBox())!;
    const text: Dragged = { items: [{ mimeType: 'text/plain', data: 'North tower' }], files: [] };
    await keptOut(page, text, { x: x + width / 2, y: y + height / 2 });
    await expect.poll(() => field.inputValue()).toContain('North tower');
  }, 60_000);
});
