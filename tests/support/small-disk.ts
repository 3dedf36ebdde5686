/** A small disk of its own for a test, which can be filled and made read-only. */
import { execFileSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'vitest';

export interface SmallDisk {
  readonly folder: string;
  remount(access: 'ro' | 'rw'): void;
  remove(): Promise<void>;
}

/** A disk of its own; where mounting is not permitted the test is skipped with one line, and fails under `CI=true`. */
export const requireSmallDisk = async (context: TestContext, kibibytes: number): Promise<SmallDisk> => {
  const folder = await mkdtemp(join(tmpdir(), 'small-disk-'));
  const run = (command: string, ...args: string[]) => execFileSync(command, args, { stdio: 'pipe' });
  try {
    run('mount', '-t', 'tmpfs', '-o', `size=${kibibytes}k`, 'tmpfs', folder);
  } catch (error) {
    await rm(folder, { recursive: true });
    if (process.env.CI === 'true') throw error;
    console.log('Skipped: mounting a small disk is not permitted here.');
    return context.skip();
  }
  return {
    folder,
    remount: (access) => run('mount', '-o', `remount,${access}`, folder),
    remove: async () => {
      run('umount', '--lazy', folder);
      await rm(folder, { recursive: true });
    },
  };
};
