import { mkdir, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { type Bundle, buildIfStale, isFresh } from '../../src/host/build.ts';
import { temporaryFolder } from './small-page.ts';

let product: string;
let builds: number;
let bundle: Bundle;

beforeEach(async () => {
  product = await temporaryFolder();
  builds = 0;
  bundle = {
    name: 'page',
    inputs: ['source', 'lock.json', 'not-there'],
    output: 'page',
    build: async (folder) => {
      builds += 1;
      await mkdir(join(folder, 'dist', 'page'), { recursive: true });
      await writeFile(join(folder, 'dist', 'page', 'out.js'), 'built');
    },
  };
  await mkdir(join(product, 'source', 'deep'), { recursive: true });
  await writeFile(join(product, 'source', 'deep', 'one.ts'), 'one');
  await writeFile(join(product, 'lock.json'), '{}');
});

test('a bundle is built once, and not again because a file was touched', async () => {
  expect(await buildIfStale(bundle, product)).toBe(true);
  await utimes(join(product, 'lock.json'), new Date(), new Date());
  expect(await buildIfStale(bundle, product)).toBe(false);
  expect(builds).toBe(1);
});

test('two programs that start at once build it once, and a lock that was left behind is not waited for', async () => {
  const slow = {
    ...bundle,
    build: async (folder: string) => {
      await new Promise((resolve) => setTimeout(resolve, 250));
      await bundle.build(folder);
    },
  };
  const built = await Promise.all([buildIfStale(slow, product), buildIfStale(slow, product)]);
  expect(built.sort()).toEqual([false, true]);
  expect(builds).toBe(1);
  await mkdir(join(product, 'dist', 'page.lock'));
  await utimes(join(product, 'dist', 'page.lock'), new Date(0), new Date(0));
  expect(await buildIfStale(slow, product)).toBe(false);
});

test.each([
  ['a changed file', () => writeFile(join(product, 'source', 'deep', 'one.ts'), 'two')],
  ['a new file', () => writeFile(join(product, 'source', 'two.ts'), '')],
  ['a file that is gone', () => rm(join(product, 'source', 'deep', 'one.ts'))],
  ['an output that is gone', () => rm(join(product, 'dist', 'page'), { recursive: true })],
])('%s makes it stale', async (_what, change) => {
  await buildIfStale(bundle, product);
  await change();
  expect(await buildIfStale(bundle, product)).toBe(true);
});

test('a file that was changed within its size and was given its old time again makes it stale', async () => {
  const file = join(product, 'source', 'deep', 'one.ts');
  await buildIfStale(bundle, product);
  await new Promise((resolve) => setTimeout(resolve, 2100));
  expect(await isFresh(bundle, product)).toBe(true);
  const { atime, mtime } = await stat(file);
  await writeFile(file, 'two');
  await utimes(file, atime, mtime);
  expect(await isFresh(bundle, product)).toBe(false);
  expect(await buildIfStale(bundle, product)).toBe(true);
});

test('after a build that failed the next start tries again', async () => {
  await buildIfStale(bundle, product);
  await writeFile(join(product, 'lock.json'), '{"changed":true}');
  const broken = { ...bundle, build: () => Promise.reject(new Error('does not compile')) };
  await expect(buildIfStale(broken, product)).rejects.toThrow('does not compile');
  await writeFile(join(product, 'lock.json'), '{}');
  expect(await buildIfStale(bundle, product)).toBe(true);
});
