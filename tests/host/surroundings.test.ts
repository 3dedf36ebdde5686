/** What the host tells of the PC, for a look over the station. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isElectronRuntimeThere } from '../../src/host/electron-runtime.ts';
import { surroundingsOf } from '../../src/host/surroundings.ts';
import { temporaryFolder } from '../support/station-fixture.ts';

describe('Electron’s runtime', () => {
  test('is there once its package has fetched it, or where a site provides it, and is never fetched by asking', async () => {
    const product = await temporaryFolder();
    const home = join(product, 'node_modules', 'electron');
    expect(await isElectronRuntimeThere(product, {})).toBe(false);
    await mkdir(join(home, 'dist'), { recursive: true });
    await writeFile(join(home, 'path.txt'), 'electron');
    expect(await isElectronRuntimeThere(product, {})).toBe(false);
    await writeFile(join(home, 'dist', 'electron'), '');
    expect(await isElectronRuntimeThere(product, {})).toBe(true);
    const site = await temporaryFolder();
    expect(await isElectronRuntimeThere(product, { ELECTRON_OVERRIDE_DIST_PATH: site })).toBe(false);
    await writeFile(join(site, 'electron'), '');
    expect(await isElectronRuntimeThere(product, { ELECTRON_OVERRIDE_DIST_PATH: site })).toBe(true);
  });
});

test('the host names the Node that runs and the least that the product asks for', async () => {
  const folder = await temporaryFolder();
  const surroundings = surroundingsOf('terminal', folder);
  expect(surroundings.faultLog.startsWith(folder)).toBe(true);
  expect(await surroundings.look()).toMatchObject({
    shell: 'terminal',
    nodeVersion: process.versions.node,
    nodeWanted: '20.19',
  });
});
