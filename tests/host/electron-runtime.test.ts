import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { findElectron } from '../../src/host/electron-runtime.ts';
import { temporaryFolder } from './small-page.ts';

let product: string;
let asked: string;

/** A stand-in for the `electron` package: it counts how often it is asked to fetch, and answers with this line. */
const packageThat = async (answers: string): Promise<void> => {
  const folder = join(product, 'node_modules', 'electron');
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, 'package.json'), '{"name": "electron", "main": "index.js"}');
  const counts = `require('node:fs').appendFileSync(${JSON.stringify(asked)}, 'x');`;
  await writeFile(join(folder, 'index.js'), `${counts}\n${answers}\n`);
};

const timesAsked = async (): Promise<number> => (await readFile(asked, 'utf8').catch(() => '')).length;

beforeEach(async () => {
  vi.stubEnv('ELECTRON_OVERRIDE_DIST_PATH', undefined);
  product = await temporaryFolder();
  asked = join(product, 'asked');
});
afterEach(() => {
  vi.unstubAllEnvs();
});

test('a runtime that was fetched is found without asking anybody', async () => {
  await packageThat("throw new Error('not needed');");
  const dist = join(product, 'node_modules', 'electron', 'dist');
  await mkdir(dist);
  await writeFile(join(dist, 'electron'), '');
  await writeFile(join(product, 'node_modules', 'electron', 'path.txt'), 'electron');
  expect(await findElectron(product)).toBe(join(dist, 'electron'));
  expect(await timesAsked()).toBe(0);
});

test('a runtime that a site provides goes before it, and nothing is fetched where it is not there', async () => {
  await packageThat("throw new Error('not needed');");
  vi.stubEnv('ELECTRON_OVERRIDE_DIST_PATH', join(product, 'provided'));
  expect(await findElectron(product)).toBeUndefined();
  await mkdir(join(product, 'provided'));
  await writeFile(join(product, 'provided', 'electron'), '');
  expect(await findElectron(product)).toBe(join(product, 'provided', 'electron'));
  expect(await timesAsked()).toBe(0);
});

test('where it cannot be fetched, it is tried again on the next day and not before', async () => {
  await packageThat("throw new Error('offline');");
  expect(await findElectron(product)).toBeUndefined();
  expect(await findElectron(product)).toBeUndefined();
  expect(await timesAsked()).toBe(1);
  const yesterday = new Date(Date.now() - 86_500_000).toISOString();
  await writeFile(join(product, 'dist', 'electron-not-fetched'), yesterday);
  await writeFile(join(product, 'runtime'), '');
  await packageThat(`module.exports = ${JSON.stringify(join(product, 'runtime'))};`);
  expect(await findElectron(product)).toBe(join(product, 'runtime'));
  expect(await timesAsked()).toBe(2);
});
