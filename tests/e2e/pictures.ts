/** `npm run pictures`: makes the pictures of the README from the invented depot, the same ones in every run. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { type BenchId, benchIdSchema } from '../../src/domain/brand.ts';
import type { TagKind } from '../../src/domain/tag-content.ts';
import { badges, pin, threeFindings, walkUntil } from './prepared-depot.ts';
import { launchBrowser, openStage, type Stage } from './stage.ts';

const output = fileURLToPath(new URL('../../assets/pictures/', import.meta.url));
const look = { language: 'en', theme: 'light', width: 1366, height: 768 } as const;
const removed = benchIdSchema.parse('AAX47GVEW7');
const passed = benchIdSchema.parse('9KAQSGGP0A');
/** Dots per inch of a tag in the README, half of what it is rendered with. */
const tagDpi = 150;

const save = async (name: string, png: Buffer): Promise<void> => {
  await mkdir(output, { recursive: true });
  const file = await sharp(png).png({ palette: true, colours: 64, dither: 0, effort: 10 }).toBuffer();
  await writeFile(join(output, `${name}.png`), file);
  console.log(`${name}.png: ${Math.ceil(file.length / 1024)} kB`);
};

const take = async (page: Page, name: string, hash: string, landmark: string): Promise<void> => {
  await page.evaluate((next) => {
    window.location.hash = next;
  }, hash);
  await page.getByRole('main').getByText(landmark).first().waitFor();
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await save(name, await page.screenshot({ animations: 'disabled' }));
};

const takeTag = async (stage: Stage, name: string, benchId: BenchId, kind: TagKind): Promise<void> => {
  const { pngBase64, widthMm } = await stage.expectOutput('tag.preview', { benchId, kind, dpi: 300 });
  const width = Math.round((widthMm / 25.4) * tagDpi);
  await save(name, await sharp(Buffer.from(pngBase64, 'base64')).resize({ width }).png().toBuffer());
};

const takeAll = async (stage: Stage): Promise<void> => {
  await stage.expectOutput('station.load-demo', {});
  await stage.expectOutput('session.sign-in', { badge: badges.inspector });
  const { page } = await stage.openWindow(look);
  await page.getByRole('button', { name: badges.inspector }).click();
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
  await page.mouse.move(0, 0);
  await take(page, 'start', '#/', 'signed in');

  const last = 'brake.near-full-payout';
  const inspection = await walkUntil(stage, removed, last, threeFindings);
  await take(page, 'check', `#/bench/${inspection}`, 'Caution');
  for (const check of [last, 'overall.doubt']) {
    await stage.expectOutput('inspection.answer', {
      inspection,
      check,
      answer: threeFindings[check] ?? { kind: 'good' },
    });
  }
  await page.reload();
  await take(page, 'verdict', `#/bench/${inspection}`, 'REMOVE FROM SERVICE');
  await stage.expectOutput('inspection.sign', { inspection, pin });
  await takeTag(stage, 'quarantine-tag', removed, 'quarantine');

  const passing = await walkUntil(stage, passed);
  await stage.expectOutput('inspection.sign', { inspection: passing, pin });
  await takeTag(stage, 'status-tag', passed, 'status');
};

const folder = await mkdtemp(join(tmpdir(), 'srl-bench-pictures-'));
const browser = await launchBrowser();
try {
  const stage = await openStage(browser, folder);
  await takeAll(stage).finally(() => stage.close());
} finally {
  await browser.close();
  await rm(folder, { recursive: true, force: true });
}
