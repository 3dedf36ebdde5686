/** `npm run pictures`: makes the pictures of the README from the invented depot, the same ones in every run. */
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { benchIdSchema } from '../../src/domain/brand.ts';
import type { InputOf } from '../../src/station/contract.ts';
import { runTool } from '../support/debian-tools.ts';
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

const takeTag = async (stage: Stage, name: string, tag: InputOf<'tag.preview'>): Promise<void> =>
  saveTag(name, await stage.expectOutput('tag.preview', { dpi: 300, ...tag }));

const saveTag = async (
  name: string,
  { pngBase64, widthMm }: { readonly pngBase64: string; readonly widthMm: number },
): Promise<void> => {
  const width = Math.round((widthMm / 25.4) * tagDpi);
  await save(name, await sharp(Buffer.from(pngBase64, 'base64')).resize({ width }).png().toBuffer());
};

/** The command sheet as poppler draws it. */
const takeSheet = async (stage: Stage): Promise<void> => {
  const { pdfBase64 } = await stage.expectOutput('command-sheet.show', {});
  const at = join(folder, 'command-sheet');
  await writeFile(`${at}.pdf`, Buffer.from(pdfBase64, 'base64'));
  runTool('pdftoppm', ['-r', '72', '-png', '-singlefile', `${at}.pdf`, at]);
  await save('command-sheet', await readFile(`${at}.png`));
};

/** The first page of the report of an inspection, as poppler draws it. */
const takeReport = async (stage: Stage, inspection: number): Promise<void> => {
  const at = join(folder, 'report');
  const { job } = await stage.expectOutput('report.make', {
    of: { kind: 'inspection', inspection },
    language: 'en',
    file: `${at}.pdf`,
  });
  await untilMade(stage, job);
  runTool('pdftoppm', ['-r', '96', '-png', '-singlefile', `${at}.pdf`, at]);
  await save('report', await readFile(`${at}.png`));
};

const untilMade = async (stage: Stage, job: number): Promise<void> => {
  const status = await stage.expectOutput('report.status', { job });
  if (status.state === 'made') return;
  if (status.state === 'refused') throw new Error(status.sentence);
  await setTimeout(20);
  return untilMade(stage, job);
};

const takeAll = async (stage: Stage): Promise<void> => {
  await stage.expectOutput('station.load-demo', {});
  await stage.expectOutput('session.sign-in', { badge: badges.inspector });
  const { page } = await stage.openWindow(look);
  await page.getByRole('button', { name: badges.inspector }).click();
  await page.getByRole('banner').getByText('Teo Arandal').waitFor();
  // The press of a badge far down scrolled to it.
  await page.mouse.move(600, 400);
  await page.mouse.wheel(0, -2000);
  await page.mouse.move(0, 0);
  await setTimeout(300);
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
  await takeReport(stage, inspection);
  await takeTag(stage, 'quarantine-tag', { benchId: removed, kind: 'quarantine' });
  await takeTag(stage, 'quarantine-tag-preprinted', {
    benchId: removed,
    kind: 'quarantine',
    face: { preprintedHeaderMm: 40 },
  });

  const passing = await walkUntil(stage, passed);
  await stage.expectOutput('inspection.sign', { inspection: passing, pin });
  await takeTag(stage, 'status-tag', { benchId: passed, kind: 'status' });
  await takeTag(stage, 'status-tag-tall', {
    benchId: passed,
    kind: 'status',
    stock: { widthMm: 50, heightMm: 100 },
  });
  await takeTag(stage, 'status-tag-flag', {
    benchId: passed,
    kind: 'status',
    stock: { widthMm: 206, heightMm: 50 },
    face: { form: { shape: 'flag', fold: 'upright', sides: 'both', clearMm: 6 } },
  });
  await takeTag(stage, 'id-label', { benchId: passed, kind: 'id' });
  await saveTag('bin-label', await stage.expectOutput('bin-label.show', { code: 'CAGE2' }));
  await takeSheet(stage);
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
