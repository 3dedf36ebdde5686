/** What is looked at whether or not the record can be opened: the PC, the program on it, and the folder of the data. */
import { open, rm, stat, statfs } from 'node:fs/promises';
import { freemem } from 'node:os';
import { join } from 'node:path';
import { finding } from '../../domain/health/finding.ts';
import { judgeFaults } from '../../domain/health/judge-devices.ts';
import {
  judgeAssets,
  judgeBrowser,
  judgeMemory,
  judgePage,
  judgeRuntime,
  judgeShell,
  type Machine,
} from '../../domain/health/judge-machine.ts';
import { type FolderState, judgeDataFolder } from '../../domain/health/judge-storage.ts';
import { evidenceFolderName } from '../../ledger/evidence-folder.ts';
import { ledgerFileName } from '../../ledger/sqlite/sqlite-ledger.ts';
import { checkAssets } from './asset-check.ts';
import type { Look, PlaceSources } from './look.ts';

const quickMs = 5_000;

const ofMachine = (
  subject: Look<PlaceSources>['subject'],
  judge: (machine: Machine) => ReturnType<typeof judgeRuntime>,
): Look<PlaceSources> => ({
  subject,
  limitMs: quickMs,
  look: async ({ surroundings }) => [
    surroundings === undefined ? finding(subject, 'not known', 'not-told') : judge(await surroundings.look()),
  ],
});

export const looksAtPlace: readonly Look<PlaceSources>[] = [
  ofMachine('runtime', judgeRuntime),
  ofMachine('shell', judgeShell),
  ofMachine('browser', judgeBrowser),
  ofMachine('page', judgePage),
  {
    subject: 'assets',
    limitMs: quickMs,
    look: async ({ productFolder }) => [judgeAssets(await checkAssets(join(productFolder, 'assets')))],
  },
  {
    subject: 'memory',
    limitMs: quickMs,
    look: async () => [judgeMemory({ usedBytes: process.memoryUsage.rss(), freeBytes: freemem() })],
  },
  {
    subject: 'data folder',
    limitMs: quickMs,
    look: async ({ folder }) =>
      judgeDataFolder({
        folder,
        state: await folderState(folder),
        logBytes: await sizeOf(join(folder, `${ledgerFileName}-wal`)),
        areEvidenceFilesReachable: await isReachable(join(folder, evidenceFolderName)),
      }),
  },
  {
    subject: 'faults',
    limitMs: quickMs,
    look: async ({ surroundings, now }) => {
      if (surroundings === undefined) return [finding('faults', 'not known', 'not-told')];
      const found = await stat(surroundings.faultLog).catch(() => undefined);
      const file =
        found === undefined ? undefined : { writtenAt: found.mtime.toISOString(), bytes: found.size };
      return [judgeFaults({ now: now(), file })];
    },
  },
];

/** Tried by a file that is written and taken away again: rights alone do not tell of a disk that is full or read-only. */
export const folderState = async (folder: string): Promise<FolderState> => {
  const found = await stat(folder).catch(() => undefined);
  if (!found?.isDirectory()) return 'not there';
  const trial = join(folder, `.tried-${process.pid}`);
  try {
    const file = await open(trial, 'w');
    try {
      await file.write('tried');
    } finally {
      await file.close();
      await rm(trial, { force: true });
    }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    return code === 'ENOSPC' || code === 'EDQUOT' ? 'full' : 'not writable';
  }
  return (await sizeOf(join(folder, ledgerFileName))) === undefined ? 'no station' : 'writable';
};

export const sizeOf = (file: string): Promise<number | undefined> =>
  stat(file).then(
    ({ size }) => size,
    () => undefined,
  );

/** A folder that was never made holds nothing that could be missing; something else under its name does. */
const isReachable = async (folder: string): Promise<boolean> => {
  try {
    return (await stat(folder)).isDirectory();
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ENOENT';
  }
};

export const freeBytesAt = async (folder: string): Promise<number> => {
  const { bavail, bsize } = await statfs(folder);
  return bavail * bsize;
};
