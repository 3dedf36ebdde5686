/** Pictures that are pasted, dropped or opened in a window of a real Chromium: what is read in them, and what is no picture. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import { hasBrowser } from '../support/browser.ts';
import { temporaryFolder } from '../support/station-fixture.ts';
import { frameHeight, frameOf, frameWidth, worn } from './camera-recording.ts';
import { openCameraWindow, type PrintedTags } from './camera-window.ts';
import { devices } from './prepared-depot.ts';

const shown = formatBenchId(devices.inService);
const card = (page: Page) => page.getByRole('heading', { level: 1, name: shown });

interface GivenFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

const windowWithTags = async () => {
  let tags: PrintedTags | undefined;
  const opened = await openCameraWindow((printed) => {
    tags = printed;
    return 'no camera';
  });
  return { ...opened, tags: tags! };
};

/** Drags files from outside over the window and lets them go. */
const drop = async (page: Page, files: readonly GivenFile[]): Promise<void> => {
  const given = files.map(({ name, type, bytes }) => ({
    name,
    type,
    text: Buffer.from(bytes).toString('base64'),
  }));
  await page.evaluate((list) => {
    const dataTransfer = new DataTransfer();
    for (const { name, type, text } of list) {
      const bytes = Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
      dataTransfer.items.add(new File([bytes], name, { type }));
    }
    const target = document.querySelector('main') ?? document.body;
    for (const kind of ['dragover', 'drop'])
      target.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
  }, given);
};

/** Puts a PNG or a text on the clipboard as another program does, then pastes it with the keyboard. */
const paste = async (page: Page, type: 'image/png' | 'text/plain', bytes: Uint8Array): Promise<void> => {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate(
    async ([kind, text]) => {
      const given = Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
      await navigator.clipboard.write([new ClipboardItem({ [kind]: new Blob([given], { type: kind }) })]);
    },
    [type, Buffer.from(bytes).toString('base64')] as const,
  );
  await page.keyboard.press('Control+V');
};

/** A photograph of a tag that lies on a bench, as a file of a phone. */
const photographOf = async (tag: Uint8Array, blur = 0.5, widthDots = 700): Promise<Buffer> => {
  const frame = await frameOf(tag, { widthDots, turned: 0, tilt: 0, blur, right: 0, down: 0 });
  return sharp(frame, { raw: { width: frameWidth, height: frameHeight, channels: 1 } })
    .jpeg({ quality: 85 })
    .toBuffer();
};

const noPictures = [
  ['empty.png', '', '“empty.png” is empty'],
  ['notes.png', 'Serial number NF-204417', '“notes.png” is not a picture that can be read.'],
  ['IMG_0042.HEIC', '\0\0\0\x18ftypheic\0\0\0\0mif1heic', '“IMG_0042.HEIC” is a HEIC picture'],
  ['broken.png', '\x89PNG\r\n\x1a\n and then something else', '“broken.png” is not a picture'],
] as const;

describe.runIf(hasBrowser())('a picture', () => {
  test('that is pasted is read as a scanner reads the tag: its card opens', async () => {
    const { page, tags } = await windowWithTags();
    await paste(
      page,
      'image/png',
      await sharp(await photographOf(tags.status))
        .png()
        .toBuffer(),
    );
    await card(page).waitFor();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }, 120_000);

  test('that is dropped is read too, as JPEG lying on its side with an EXIF orientation', async () => {
    const { page, tags } = await windowWithTags();
    const onItsSide = await sharp(
      await sharp(await photographOf(tags.status))
        .rotate(-90)
        .toBuffer(),
    )
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer();
    await drop(page, [{ name: 'tag.jpg', type: 'image/jpeg', bytes: onItsSide }]);
    await card(page).waitFor();
  }, 120_000);

  test('that is opened is read too, as WebP', async () => {
    const { page, tags } = await windowWithTags();
    await page.getByRole('button', { name: 'Camera' }).click();
    const webp = await sharp(await photographOf(tags.status))
      .webp()
      .toBuffer();
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'tag.webp', mimeType: 'image/webp', buffer: webp });
    await card(page).waitFor();
  }, 120_000);

  test('of a worn tag only asks, and a no opens nothing', async () => {
    const { page, tags } = await windowWithTags();
    const bytes = await photographOf(await worn(tags.status), 4, 1200);
    await drop(page, [{ name: 'worn.jpg', type: 'image/jpeg', bytes }]);
    await page.getByRole('heading', { name: 'Do you see this on the device?' }).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => window.location.hash)).not.toContain('device');
  }, 120_000);

  test('in which nothing is read says so, and what helps', async () => {
    const { page } = await windowWithTags();
    const empty = sharp({ create: { width: 400, height: 300, channels: 3, background: '#998' } });
    await drop(page, [{ name: 'bench.png', type: 'image/png', bytes: await empty.png().toBuffer() }]);
    await page.getByRole('alert').getByText('No tag and no code was found in this picture.').waitFor();
    await page.getByText('Wipe the tag clean.').waitFor();
  }, 120_000);

  test('that takes long shows how far it is, and is left at once with Cancel, the worker with it', async () => {
    const { page } = await windowWithTags();
    const noise = Buffer.from(Array.from({ length: 1600 * 1200 }, (_, at) => (at * 7919 * (at % 89)) % 251));
    const bytes = await sharp(noise, { raw: { width: 1600, height: 1200, channels: 1 } })
      .png()
      .toBuffer();
    await drop(page, [{ name: 'noise.png', type: 'image/png', bytes }]);
    await page.getByRole('progressbar', { name: 'How much of the time for reading is used' }).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.workers().length, { timeout: 20_000 }).toBe(0);
  }, 120_000);

  test('that is none is refused with one sentence that says what to do', async () => {
    const { page } = await windowWithTags();
    for (const [name, text, sentence] of noPictures) {
      await drop(page, [{ name, type: 'image/png', bytes: Buffer.from(text, 'latin1') }]);
      await page.getByRole('alert').getByText(sentence).waitFor();
      await page.getByRole('button', { name: 'Open another picture' }).waitFor();
    }
  }, 120_000);

  test('that is too large is refused with the size that is taken, and so are two at once', async () => {
    const { page } = await windowWithTags();
    const folder = join(await temporaryFolder(), 'given');
    await mkdir(folder);
    const png = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#888' } })
      .png()
      .toBuffer();
    await writeFile(join(folder, 'large.png'), Buffer.concat([png, Buffer.alloc(20_000_000)]));
    await page.getByRole('button', { name: 'Camera' }).click();
    await page.locator('input[type=file]').setInputFiles(join(folder, 'large.png'));
    await page.getByRole('alert').getByText('“large.png” is larger than 20 MB.').waitFor();
    const file = { name: 'a.png', type: 'image/png', bytes: png };
    await drop(page, [file, { ...file, name: 'b.png' }]);
    await page.getByRole('alert').getByText('Give one picture at a time.').waitFor();
  }, 60_000);

  test('and never a text: what is pasted into a field as text stays there', async () => {
    const { page } = await windowWithTags();
    const field = page.getByRole('banner').getByRole('textbox');
    await field.focus();
    await paste(page, 'text/plain', Buffer.from('NF-204417'));
    await expect.poll(() => field.inputValue()).toBe('NF-204417');
    expect(await page.getByRole('dialog').count()).toBe(0);
  }, 60_000);
});
