/** Builds the bundles that are not there, or that are older than what they are made of. */
import { createHash } from 'node:crypto';
import { readdirSync, statSync } from 'node:fs';
import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';

export interface Bundle {
  readonly name: string;
  /** Files and folders, from the product folder, that the bundle is made of. */
  readonly inputs: readonly string[];
  /** Folder under `dist` where it ends up. */
  readonly output: string;
  readonly build: (productFolder: string) => Promise<void>;
}

/** What is built is what people work with, also where a test run builds it: React looks at `NODE_ENV`. */
const viteBuild = async (productFolder: string, config: string, mode: string): Promise<void> => {
  const { build } = await import('vite');
  const environment = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build({ configFile: join(productFolder, config), mode, logLevel: 'error' });
  } finally {
    if (environment === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = environment;
  }
};

export const rendererBundle: Bundle = {
  name: 'renderer',
  inputs: ['renderer', 'src/domain', 'src/station', 'src/tags/read', 'assets', 'package-lock.json'],
  output: 'renderer',
  build: (productFolder) => viteBuild(productFolder, 'renderer/vite.config.ts', 'production'),
};

/** The launcher with all that it loads at once: it starts in a fraction of the time of the modules that it is made of. */
export const launcherBundle: Bundle = {
  name: 'host',
  inputs: ['src', 'assets/messages', 'assets/drawings', 'package-lock.json'],
  output: 'host',
  build: (productFolder) => viteBuild(productFolder, 'src/host/vite.config.ts', 'production'),
};

export const electronBundle: Bundle = {
  name: 'electron',
  inputs: ['electron', 'src', 'assets', 'package-lock.json'],
  output: 'electron',
  build: async (productFolder) => {
    for (const mode of ['main', 'preload']) await viteBuild(productFolder, 'electron/vite.config.ts', mode);
  },
};

/** Returns true where it was built anew. Throws where the build fails; the next start then tries again. */
export const buildIfStale = async (bundle: Bundle, productFolder: string): Promise<boolean> => {
  const dist = join(productFolder, 'dist');
  const stampFile = join(dist, `${bundle.name}.stamp`);
  await mkdir(dist, { recursive: true });
  return alone(join(dist, `${bundle.name}.lock`), async () => {
    if (await isFresh(bundle, productFolder)) return false;
    const stamp = await stampOf(bundle.inputs, productFolder);
    await rm(stampFile, { force: true });
    await bundle.build(productFolder);
    await writeFile(stampFile, stamp);
    return true;
  });
};

/** True where it was built once, be it stale or not. */
export const wasBuilt = (bundle: Bundle, productFolder: string): Promise<boolean> =>
  isThere(join(productFolder, 'dist', bundle.output));

/** Looks at the files alone where none of them can have changed since they were last read, which takes a moment of the start. */
export const isFresh = async (bundle: Bundle, productFolder: string): Promise<boolean> => {
  const stampFile = join(productFolder, 'dist', `${bundle.name}.stamp`);
  if (!(await wasBuilt(bundle, productFolder))) return false;
  const [stamp = '', known = ''] = (await readFile(stampFile, 'utf8').catch(() => '')).split('\n');
  if (stamp === '') return false;
  const { look, settled } = lookOf(bundle.inputs, productFolder);
  if (look === known) return true;
  if (stamp !== (await stampOf(bundle.inputs, productFolder))) return false;
  if (settled) await writeFile(stampFile, `${stamp}\n${look}`).catch(() => undefined);
  return true;
};

/** A file that was written within so many milliseconds may be written once more and bear the same time. */
const settledMs = 2000;

/**
 * A hash over the names, the sizes and the times of the files; `settled` where a change after it would show in it. Nothing else
 * goes on before a start knows it, and to wait for each file by itself would take longer than to look at it.
 */
const lookOf = (
  inputs: readonly string[],
  productFolder: string,
): { readonly look: string; readonly settled: boolean } => {
  const hash = createHash('sha256');
  let newest = 0;
  for (const input of inputs) {
    for (const file of filesUnder(join(productFolder, input))) {
      const looked = statSync(file, { throwIfNoEntry: false });
      const { size, mtimeMs, ctimeMs } = looked ?? { size: 0, mtimeMs: 0, ctimeMs: 0 };
      newest = Math.max(newest, mtimeMs, ctimeMs);
      hash.update(`${relative(productFolder, file)}\0${size}\0${mtimeMs}\0${ctimeMs}\0`);
    }
  }
  return { look: hash.digest('hex'), settled: newest < Date.now() - settledMs };
};

/** No build takes this long; who held the lock then was ended before it could give it back. */
const lockGoodForMs = 120_000;

/** One program at a time; the others wait, and find the work done. */
const alone = async <Result>(lock: string, work: () => Promise<Result>): Promise<Result> => {
  while (!(await take(lock))) await new Promise((resolve) => setTimeout(resolve, 100));
  try {
    return await work();
  } finally {
    await rm(lock, { recursive: true, force: true });
  }
};

const take = async (lock: string): Promise<boolean> => {
  try {
    await mkdir(lock);
    return true;
  } catch (error) {
    const held = await stat(lock).catch(() => undefined);
    if (held === undefined && !(error instanceof Error && 'code' in error && error.code === 'EEXIST'))
      throw error;
    if (held !== undefined && Date.now() - held.mtimeMs > lockGoodForMs)
      await rm(lock, { recursive: true, force: true });
    return false;
  }
};

/** A hash over the names and the contents, so that neither a fresh clone nor a copy of the folder confuses it. */
const stampOf = async (inputs: readonly string[], productFolder: string): Promise<string> => {
  const hash = createHash('sha256');
  for (const input of inputs) {
    for (const file of filesUnder(join(productFolder, input))) {
      const content = await readFile(file);
      hash
        .update(`${relative(productFolder, file).split(sep).join('/')}\0${content.length}\0`)
        .update(content);
    }
  }
  return hash.digest('hex');
};

/** The file itself, or every file of a folder, in one order; nothing where there is neither. */
const filesUnder = (path: string): readonly string[] => {
  try {
    const entries = readdirSync(path, { recursive: true, withFileTypes: true });
    return entries
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort();
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOTDIR') return [path];
    return [];
  }
};

const isThere = async (folder: string): Promise<boolean> =>
  (await readdir(folder).catch(() => [])).length > 0;
