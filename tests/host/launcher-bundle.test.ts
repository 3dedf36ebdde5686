/** What of the launcher's bundle is loaded until a station is open. */
import { readFile } from 'node:fs/promises';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { buildIfStale, launcherBundle } from '../../src/host/build.ts';
import { productFolder } from '../../src/host/product-folder.ts';

const folder = join(productFolder, 'dist', launcherBundle.output);

beforeAll(() => buildIfStale(launcherBundle, productFolder), 120_000);

interface Loaded {
  readonly files: ReadonlySet<string>;
  readonly packages: ReadonlySet<string>;
}

/** A file of the bundle, with all that it cannot be loaded without. */
const loadedWith = async (file: string, files = new Set<string>()): Promise<Loaded> => {
  files.add(file);
  const script = await readFile(join(folder, file), 'utf8');
  const packages = new Set<string>();
  for (const [, from = ''] of script.matchAll(/^import\b[^"]*"([^"]+)";$/gm)) {
    if (!from.startsWith('./')) packages.add(from);
    else if (!files.has(from.slice(2)))
      for (const name of (await loadedWith(from.slice(2), files)).packages) packages.add(name);
  }
  return { files, packages: new Set([...packages].filter((name) => !isBuiltin(name))) };
};

test('a browser is opened with one file, and a station with one more', async () => {
  const first = await loadedWith('launch.js');
  expect([...first.files]).toEqual(['launch.js']);
  expect([...first.packages]).toEqual([]);

  const script = await readFile(join(folder, 'launch.js'), 'utf8');
  const [, station = ''] = /import\("\.\/(launch-station-[^"]+)"\)/.exec(script) ?? [];
  const second = await loadedWith(station);
  expect([...second.files]).toEqual([station, 'launch.js']);
  expect([...second.packages]).toEqual(['sqlite3']);
});
