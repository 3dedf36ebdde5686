/** The camera of the window in a real Chromium whose fake camera plays recordings of our own tags. */

import { describe, expect, test } from 'vitest';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import { hasBrowser } from '../support/browser.ts';
import { heldStill, movingPast, worn } from './camera-recording.ts';
import { openCameraWindow } from './camera-window.ts';
import { devices } from './prepared-depot.ts';

const shown = formatBenchId(devices.inService);

describe.runIf(hasBrowser())('the camera', () => {
  test('reads a tag that is carried past, tilted and blurred, as a scanner reads it: its card opens', async () => {
    const { page } = await openCameraWindow(({ status }) => movingPast(status));
    await page.getByRole('button', { name: 'Camera' }).click();
    await page.getByRole('heading', { level: 1, name: shown }).waitFor();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => window.location.hash)).toBe(`#/device/${devices.inService}`);
  }, 120_000);

  test('only asks about a worn tag, and opens its card only after a yes', async () => {
    const { page } = await openCameraWindow(async ({ status }) => heldStill(await worn(status), 4));
    await page.getByRole('button', { name: 'Camera' }).click();
    await page.getByRole('heading', { name: 'Do you see this on the device?' }).waitFor({ timeout: 60_000 });
    const dialog = page.getByRole('dialog');
    await dialog.getByText(shown).waitFor();
    expect(await page.evaluate(() => window.location.hash)).not.toContain(devices.inService);
    await page.screenshot({ path: '/tmp/cam-shot-worn.png' });
    await dialog.getByRole('button', { name: 'Yes, I see it: open the device' }).click();
    await page.getByRole('heading', { level: 1, name: shown }).waitFor();
  }, 120_000);
});
