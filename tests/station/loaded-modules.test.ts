/** What a station loads when it is opened, and what only when it is first needed. */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { productFolder } from '../../src/host/product-folder.ts';

const run = promisify(execFile);

interface LoadedModules {
  readonly opened: readonly string[];
  /** Once a tag was drawn besides. */
  readonly drawn: readonly string[];
}

/** In a process of its own, as `npm start` runs the station: a test runner loads modules in its own way. */
const loadedModules = async (): Promise<LoadedModules> => {
  const program = ['--import', 'tsx', 'tests/support/loaded-modules.ts'];
  const { stdout } = await run(process.execPath, program, { cwd: productFolder });
  return JSON.parse(stdout);
};

/** Packages that draw, decode, pack and typeset: 10 to 35 MB of memory each when they are loaded alone. */
const heavy = [
  '@pdf-lib/fontkit',
  'bwip-js',
  'csv-parse',
  'csv-stringify',
  'pdf-lib',
  'read-excel-file',
  'sharp',
  'write-excel-file',
  'yauzl',
  'yazl',
  'zxing-wasm',
];

describe('opening a station', () => {
  test('loads nothing that draws, decodes, packs or typesets; a first tag does', async () => {
    const { opened, drawn } = await loadedModules();
    expect(opened).toContain('sqlite3');
    expect(opened).toContain('zod');
    expect(opened.filter((name) => heavy.includes(name))).toEqual([]);
    expect(drawn).toEqual(
      expect.arrayContaining(['@pdf-lib/fontkit', 'bwip-js', 'pdf-lib', 'sharp', 'zxing-wasm']),
    );
  }, 120_000);
});
