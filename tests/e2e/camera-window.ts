/** A window with the invented depot whose camera plays a recording, or that has none. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { testBrowser, testBrowserArguments } from '../support/browser.ts';
import { demoStation, type TestStation } from '../support/station-fixture.ts';
import { writeRecording } from './camera-recording.ts';
import { badges, devices } from './prepared-depot.ts';
import { type Look, openStage, type Stage } from './stage.ts';
import { WedgeScanner } from './wedge-scanner.ts';

export interface CameraWindow {
  readonly page: Page;
  readonly stage: Stage;
  /** The data folder. */
  readonly folder: string;
  readonly scanner: WedgeScanner;
}

/** What the camera sees: frames, no camera at all, or one that the window may not use. */
export type CameraView = readonly Uint8Array[] | 'no camera' | 'not allowed';

/** The rasters of what the invented depot prints for one of its devices in service. */
export interface PrintedTags {
  readonly status: Uint8Array;
  readonly label: Uint8Array;
}

const printedTags = async ({ expectOutput }: TestStation): Promise<PrintedTags> => {
  const benchId = devices.inService;
  const { device } = await expectOutput('device.show', { benchId });
  const again = (device.currentTag?.printed ?? 0) > 0 ? { reprintBecause: 'lost' as const } : {};
  const status = await expectOutput('tag.issue', { benchId, kind: 'status', ...again });
  const label = await expectOutput('tag.issue', { benchId, kind: 'id' });
  return { status: await readFile(status.pngPath), label: await readFile(label.pngPath) };
};

const usualLook: Look = { language: 'en', theme: 'light', width: 1366, height: 768 };

/** `view` is given the tags that the depot printed, so that the camera can see them. */
export const openCameraWindow = async (
  view: (tags: PrintedTags) => CameraView | Promise<CameraView>,
  look: Look = usualLook,
): Promise<CameraWindow> => {
  const station = await demoStation();
  const seen = await view(await printedTags(station));
  await station.close();
  const recording = join(station.folder, 'camera.y4m');
  if (typeof seen !== 'string') await writeRecording(recording, seen);
  const browser = await chromium.launch({
    executablePath: testBrowser(),
    args: [...testBrowserArguments, ...switchesFor(seen, recording)],
  });
  onTestFinished(() => browser.close());
  const stage = await openStage(browser, station.folder);
  onTestFinished(() => stage.close());
  const { page, faults } = await stage.openWindow(look);
  onTestFinished(() => {
    if (faults.length > 0) throw new Error(`The page reported: ${faults.join('; ')}`);
  });
  await page.context().grantPermissions(seen === 'not allowed' ? [] : ['camera']);
  const scanner = new WedgeScanner(page, await page.context().newCDPSession(page));
  const field = page.getByRole('banner').getByRole('textbox');
  await field.fill(badges.inspector);
  await field.press('Enter');
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
  return { page, stage, folder: station.folder, scanner };
};

/** Switches of Chromium's fake capture device. */
const switchesFor = (seen: CameraView, recording: string): readonly string[] => {
  if (seen === 'no camera') return ['--use-fake-device-for-media-stream=device-count=0'];
  if (seen === 'not allowed') return ['--use-fake-device-for-media-stream'];
  return ['--use-fake-device-for-media-stream', `--use-file-for-fake-video-capture=${recording}`];
};
