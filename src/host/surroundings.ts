/** What the host knows of the PC, for whoever looks the station over. Nothing is fetched or started for it. */
import { access, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { ShellKind } from '../domain/health/judge-machine.ts';
import type { Surroundings } from '../station/health/surroundings.ts';
import { findBrowser } from './browser.ts';
import { isElectronRuntimeThere } from './electron-runtime.ts';
import { faultLogFile } from './fault-log.ts';
import { productFolder } from './product-folder.ts';

/** `folder` is the data folder. */
export const surroundingsOf = (shell: ShellKind, folder: string): Surroundings => ({
  faultLog: faultLogFile(folder),
  look: async () => {
    const [nodeWanted, hasElectronRuntime, browser, isPageBuilt] = await Promise.all([
      wantedNode(),
      isElectronRuntimeThere(productFolder, process.env),
      findBrowser(),
      isThere(join(productFolder, 'dist', 'renderer', 'index.html')),
    ]);
    return {
      shell,
      nodeVersion: process.versions.node,
      nodeWanted,
      electronVersion: process.versions.electron,
      hasElectronRuntime: hasElectronRuntime || process.versions.electron !== undefined,
      browser,
      isPageBuilt,
    };
  },
});

const packageSchema = z.object({ engines: z.object({ node: z.string() }) });

const wantedNode = async (): Promise<string> => {
  const { engines } = packageSchema.parse(
    JSON.parse(await readFile(join(productFolder, 'package.json'), 'utf8')),
  );
  return engines.node.replace(/^\D+/, '');
};

const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );
