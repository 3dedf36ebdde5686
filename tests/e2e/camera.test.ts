/** The camera of the window in a real Chromium whose fake camera plays recordings of our own tags. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { renderTag } from '../../src/tags/render-tag.ts';
import { hasBrowser } from '../support/browser.ts';
import { frameOf, heldStill, movingPast, worn } from './camera-recording.ts';
import { openCameraWindow } from './camera-window.ts';
import { Keyboard } from './keyboard.ts';
import { devices } from './prepared-depot.ts';

const shown = formatBenchId(devices.inService);

/** A bench with nothing on it. */
const emptyBench = async (): Promise<readonly Buffer[]> => [Buffer.alloc(1280 * 720, 93)];

describe.runIf(hasBrowser())('the camera', () => {
  test('reads a tag that is carried past, tilted and blurred, as a scanner reads it: its card opens', async () => {
    const { page } = await openCameraWindow(({ status }) => movingPast(status));
    await page.getByRole('button', { name: 'Camera' }).click();
    await page.getByRole('heading', { level: 1, name: shown }).waitFor();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }, 120_000);

  test('reads off the page’s thread: every decoder is in a worker, which is gone with the picture of the camera', async () => {
    const { page } = await openCameraWindow(emptyBench);
    const requests: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    expect(page.workers()).toHaveLength(0);
    const binaries = ['zxing', 'zbar'].map((name) =>
      page.waitForResponse((response) => new RegExp(`${name}[^/]*\\.wasm$`).test(response.url())),
    );
    await page.getByRole('button', { name: 'Camera' }).click();
    for (const binary of binaries) expect((await binary).status()).toBe(200);
    expect(page.workers()).toHaveLength(1);
    const own = new URL(page.url()).origin;
    expect(requests.filter((address) => new URL(address).origin !== own)).toEqual([]);
    expect(await codeOfPage(page)).not.toMatch(/zxing|zbar|jsqr|instantiateStreaming/i);
    const video = await page.getByLabel('Live picture of the camera').elementHandle();
    const stateOf = () =>
      video!.evaluate((element) => {
        const stream = (window as { kept?: MediaStream }).kept;
        if (stream !== undefined) return stream.getVideoTracks()[0]?.readyState;
        const live = (element as HTMLVideoElement).srcObject as MediaStream;
        (window as { kept?: MediaStream }).kept = live;
        return live.getVideoTracks()[0]?.readyState;
      });
    expect(await stateOf()).toBe('live');
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await stateOf()).toBe('ended');
    await expect.poll(() => page.workers().length, { timeout: 20_000 }).toBe(0);
  }, 120_000);

  test('only asks about a worn tag, and opens its card only after a yes', async () => {
    const { page, scanner } = await openCameraWindow(async ({ status }) => heldStill(await worn(status), 4));
    await page.getByRole('button', { name: 'Camera' }).click();
    const question = page.getByRole('heading', { name: 'Do you see this on the device?' });
    await question.waitFor({ timeout: 90_000 });
    const dialog = page.getByRole('dialog');
    for (const words of [shown, 'Norvane Lode 2', 'N2-18-1074', '2 m', 'In service'])
      await dialog.getByText(words).first().waitFor();
    await dialog
      .getByText(/^(Bars|Printed characters): \d+ of 10/)
      .first()
      .waitFor();
    await dialog.getByRole('img', { name: 'The picture in which it was read' }).waitFor();
    await scanner.scan('XCCONFIRM');
    await question.waitFor();
    expect(await page.evaluate(() => window.location.hash)).not.toContain(devices.inService);
    await scanner.scan('XC1');
    await page.getByRole('heading', { level: 1, name: shown }).waitFor();
  }, 180_000);

  test('says that there are several tags, and reads none of them', async () => {
    const other = await otherTag();
    const { page } = await openCameraWindow(async ({ label }) => {
      const left = await frameOf(label, { ...level, right: -300 });
      const right = await frameOf(other, { ...level, right: 300 });
      return [left.map((dot, at) => (at % 1280 < 640 ? dot : (right[at] ?? 0)))];
    });
    await page.getByRole('button', { name: 'Camera' }).click();
    await page.getByText('Several tags or codes are in the picture: show one at a time.').waitFor();
    expect(await page.evaluate(() => window.location.hash)).not.toContain('device');
  }, 120_000);

  test('says after a while what helps, and the scanner goes on working meanwhile', async () => {
    const { page, scanner } = await openCameraWindow(emptyBench);
    await page.getByRole('button', { name: 'Camera' }).click();
    await page.getByText('Nothing read yet. This helps:').waitFor();
    await scanner.scan(devices.inService);
    await page.getByRole('heading', { level: 1, name: shown }).waitFor();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }, 120_000);

  test.each([
    ['may not be used', 'not allowed', 'This window may not use the camera.'],
    ['is not there', 'no camera', 'No camera is connected.'],
  ] as const)(
    'that %s is named in one sentence, and a picture offered instead',
    async (_what, view, sentence) => {
      const { page } = await openCameraWindow(() => view);
      await page.getByRole('button', { name: 'Camera' }).click();
      await page.getByRole('alert').getByText(sentence).waitFor();
      await page.getByRole('button', { name: 'Open a picture' }).waitFor();
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByRole('alert').getByText(sentence).waitFor();
    },
    120_000,
  );

  test('is opened, tried and left with the keyboard alone', async () => {
    const { page } = await openCameraWindow(() => 'no camera');
    const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
    await keyboard.tabTo(/^button: Camera$/);
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Camera' }).waitFor();
    await keyboard.tabTo(/^button: Open a picture$/);
    await keyboard.tabTo(/^button: Close$/);
    await keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => keyboard.focused()).toBe('button: Camera');
  }, 120_000);
});

/** Everything that the page itself runs; what its workers run is in files of their own. */
const codeOfPage = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const addresses = [...document.querySelectorAll('script[src], link[rel="modulepreload"]')].map(
      (element) => element.getAttribute('src') ?? element.getAttribute('href') ?? '',
    );
    const codes = await Promise.all(addresses.map(async (address) => (await fetch(address)).text()));
    return codes.join();
  });

/** A label of a device that is not the one of the depot. */
const otherTag = async (): Promise<Uint8Array> => {
  const tag = await renderTag({ kind: 'id', benchId: devices.neverInspected });
  if (isRefusal(tag)) throw new Error(tag.code);
  return tag.png;
};

const level = { widthDots: 460, turned: 0, tilt: 0, blur: 0.3, right: 0, down: 0 };
