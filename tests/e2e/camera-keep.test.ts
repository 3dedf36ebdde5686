/** A picture of the marking is kept from the device card: from the camera, from a file, and from the reading just made. */
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { heldStill, movingPast } from './camera-recording.ts';
import { openCameraWindow } from './camera-window.ts';
import { devices } from './prepared-depot.ts';

const openCard = async (page: Page): Promise<void> => {
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, `#/device/${devices.inService}`);
  await page.getByText('No picture is kept yet.').waitFor();
};

const keep = (page: Page): Promise<void> =>
  page.getByRole('dialog').getByRole('button', { name: 'Keep it', exact: true }).click();

const keptFor = async ({ stage }: Awaited<ReturnType<typeof openCameraWindow>>) => {
  await stage.expectOutput('session.sign-in', { badge: 'HP10024' });
  return stage.expectOutput('device.pictures', { benchId: devices.inService });
};

describe.runIf(hasBrowser())('a picture of the marking', () => {
  test('is taken with the camera, kept, and opens large from the card; a missing file is named there', async () => {
    const opened = await openCameraWindow(({ label }) => heldStill(label, 0.3));
    const { page } = opened;
    await openCard(page);
    await page.getByRole('button', { name: 'Keep a picture of the marking' }).click();
    await page.getByRole('button', { name: 'Take the picture' }).click();
    await page.getByRole('img', { name: 'The picture to be kept' }).waitFor();
    await keep(page);
    const small = page.getByRole('button', { name: 'Show large: Marking, 10 Mar 2026' });
    await small.click();
    const large = page.getByRole('dialog').getByRole('img');
    await large.waitFor();
    await expect.poll(() => large.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(1280);
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
    const { pictures } = await keptFor(opened);
    expect(pictures).toMatchObject([{ of: 'marking', width: 1280, height: 720, keptBy: 'Teo Arandal' }]);
    await rm(join(opened.folder, 'evidence', `${pictures[0]!.sha256}.jpg`));
    await page.reload();
    await page.getByText('The file of this picture is missing.').waitFor();
  }, 120_000);

  test('comes from a file where there is no camera, every button pressed with Enter', async () => {
    const opened = await openCameraWindow(() => 'no camera');
    const { page } = opened;
    await openCard(page);
    await page.getByRole('button', { name: 'Keep a picture of the marking' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText('No camera is connected.').waitFor();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open a picture' }).focus();
    await page.keyboard.press('Enter');
    const picture = sharp({ create: { width: 300, height: 200, channels: 3, background: '#997' } });
    await (await chooser).setFiles({
      name: 'marking.png',
      mimeType: 'image/png',
      buffer: await picture.png().toBuffer(),
    });
    await page.getByRole('button', { name: 'Keep it', exact: true }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Show large: Marking/ }).waitFor();
    expect((await keptFor(opened)).pictures).toMatchObject([{ of: 'marking', width: 300, height: 200 }]);
  }, 120_000);

  test('is offered after the camera read the device, and nothing is kept unasked', async () => {
    const opened = await openCameraWindow(({ status }) => movingPast(status));
    const { page, folder } = opened;
    const before = await readdir(join(folder, 'evidence'));
    await page.getByRole('button', { name: 'Camera' }).click();
    await page.getByText('The device was just read in this picture.').waitFor();
    expect(await readdir(join(folder, 'evidence'))).toEqual(before);
    await page.getByRole('button', { name: 'Keep this picture' }).click();
    await keep(page);
    await page.getByRole('button', { name: /^Show large: Tag/ }).waitFor();
    expect(await page.getByText('The device was just read in this picture.').count()).toBe(0);
    expect((await keptFor(opened)).pictures).toMatchObject([{ of: 'tag', state: 'kept' }]);
  }, 120_000);

  test('that cannot be written is refused in the dialog, which stays open', async () => {
    const { page, folder } = await openCameraWindow(({ label }) => heldStill(label, 0.3));
    await openCard(page);
    await rm(join(folder, 'evidence'), { recursive: true });
    await sharp({ create: { width: 8, height: 8, channels: 3, background: '#997' } })
      .png()
      .toFile(join(folder, 'evidence'));
    await page.getByRole('button', { name: 'Keep a picture of the marking' }).click();
    await page.getByRole('button', { name: 'Take the picture' }).click();
    await keep(page);
    await page.getByRole('alert').getByText('Nothing was recorded.').waitFor();
    await rm(join(folder, 'evidence'));
    await keep(page);
    await page.getByRole('button', { name: /^Show large: Marking/ }).waitFor();
  }, 120_000);
});
