/** A folder for one run of the tests, in which a test file finds what another one made already. */
import { existsSync } from 'node:fs';
import { mkdtemp, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** Made before the first test of a run, and removed after the last. */
    readonly runFolder: string;
  }
}

/** The folder that `make` filled, once in a run; whoever changes anything in it works on a copy. */
export const madeOnce = async (name: string, make: (folder: string) => Promise<void>): Promise<string> => {
  const runFolder = inject('runFolder');
  const made = join(runFolder, name);
  if (existsSync(made)) return made;
  const own = await mkdtemp(join(runFolder, 'making-'));
  await make(own);
  // Another test file may have been quicker.
  await rename(own, made).catch(() => rm(own, { recursive: true }));
  return made;
};
