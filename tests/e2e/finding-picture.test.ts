/** A picture of a finding, taken during the walk: by scanner alone, and by keyboard alone. */
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { commandSymbols } from '../../src/domain/command-symbol.ts';
import { hasBrowser } from '../support/browser.ts';
import { heldStill } from './camera-recording.ts';
import { type CameraWindow, openCameraWindow } from './camera-window.ts';
import { devices } from './prepared-depot.ts';

const symbolOf = (name: string): string => commandSymbols.find((symbol) => symbol.name === name)!.text;

/** Walks, as the station sees it, to the first check of the marking. */
const openWalk = async ({ page, stage }: CameraWindow): Promise<number> => {
  await stage.expectOutput('session.sign-in', { badge: 'HP10024' });
  const { inspection } = await stage.expectOutput('inspection.start', { benchId: devices.inService });
  await page.evaluate((number) => {
    window.location.hash = `#/bench/${number}`;
  }, inspection.inspection);
  await page.getByText(/^Check 1 of/).waitFor();
  return inspection.inspection;
};

const picturesOf = async ({ stage }: CameraWindow, inspection: number) =>
  (await stage.expectOutput('inspection.pictures', { inspection })).pictures;

describe.runIf(hasBrowser())('a picture of what is seen at a check', () => {
  test('is taken, looked at, taken again and kept by scanner alone, and the check is still open', async () => {
    const opened = await openCameraWindow(({ label }) => heldStill(label, 0.3));
    const { page, scanner } = opened;
    const inspection = await openWalk(opened);
    await scanner.scan(symbolOf('picture'));
    await page.getByRole('button', { name: 'Take the picture' }).waitFor();
    await scanner.scan(symbolOf('confirm'));
    const preview = page.getByRole('img', { name: 'The picture to be kept' });
    await preview.waitFor();
    await scanner.scan(symbolOf('back'));
    await page.getByRole('button', { name: 'Take the picture' }).waitFor();
    await scanner.scan(symbolOf('good'));
    await scanner.scan(symbolOf('confirm'));
    await preview.waitFor();
    await scanner.scan(symbolOf('confirm'));
    await page.getByRole('button', { name: 'Show large: Manufacturer, 1' }).waitFor();
    await page.getByText(/^Check 1 of/).waitFor();
    expect(await picturesOf(opened, inspection)).toMatchObject([
      { check: 'marking.manufacturer', width: 1280, height: 720, keptBy: 'Teo Arandal', state: 'kept' },
    ]);
    const { inspection: shown } = await opened.stage.expectOutput('inspection.show', { inspection });
    expect(shown.answers).toEqual({});
  }, 120_000);

  test('comes from a file by keyboard alone where there is no camera', async () => {
    const opened = await openCameraWindow(() => 'no camera');
    const { page } = opened;
    const inspection = await openWalk(opened);
    await page.keyboard.press('p');
    await page.getByRole('alert').getByText('No camera is connected.').waitFor();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open a picture' }).focus();
    await page.keyboard.press('Enter');
    const picture = sharp({ create: { width: 300, height: 200, channels: 3, background: '#979' } });
    await (await chooser).setFiles({
      name: 'finding.png',
      mimeType: 'image/png',
      buffer: await picture.png().toBuffer(),
    });
    const keep = page.getByRole('button', { name: 'Keep it', exact: true });
    await keep.waitFor();
    await expect.poll(() => keep.evaluate((button) => button === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Show large: Manufacturer, 1' }).waitFor();
    expect(await picturesOf(opened, inspection)).toMatchObject([
      { check: 'marking.manufacturer', width: 300, height: 200 },
    ]);
  }, 120_000);

  test('that is dropped on the walk belongs to the check on the screen', async () => {
    const opened = await openCameraWindow(() => 'no camera');
    const { page } = opened;
    const inspection = await openWalk(opened);
    const picture = sharp({ create: { width: 40, height: 30, channels: 3, background: '#799' } });
    const base64 = (await picture.png().toBuffer()).toString('base64');
    const dataTransfer = await page.evaluateHandle((bytes) => {
      const dragged = new DataTransfer();
      const content = Uint8Array.from(atob(bytes), (character) => character.charCodeAt(0));
      dragged.items.add(new File([content], 'dropped.png', { type: 'image/png' }));
      return dragged;
    }, base64);
    await page.getByRole('main').dispatchEvent('drop', { dataTransfer });
    await page.getByRole('heading', { name: 'A picture of: Manufacturer' }).waitFor();
    await page.getByRole('button', { name: 'Keep it', exact: true }).click();
    await page.getByRole('button', { name: 'Show large: Manufacturer, 1' }).waitFor();
    expect(await picturesOf(opened, inspection)).toHaveLength(1);
  }, 120_000);
});
