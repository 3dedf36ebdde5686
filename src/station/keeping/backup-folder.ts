/** A folder for backups on another disk: marked, so that an unplugged disk is not taken for an empty folder. */
import { access, mkdir, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { isAbsolute, join, relative, resolve } from 'node:path';
import { type BackupFile, readBackupFileName } from '../../domain/keeping.ts';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';

const markName = 'srl-bench-backups.txt';

/** Of a station, in the names of its backups: the beginning of its ID, letters and digits only. */
export const stationMark = (stationId: string): string =>
  stationId
    .toLowerCase()
    .replaceAll(/[^0-9a-z]/g, '')
    .slice(0, 8);

/** Makes the folder where it is missing, and tries whether files can be written there. `field` names it in a refusal. */
export const markBackupFolder = async (
  folder: string,
  dataFolder: string,
  stationName: string,
  field: 'backupFolder' | 'checkpointFolder',
): Promise<Refusal | undefined> => {
  if (!isAbsolute(folder)) return refusal('backup-folder-not-absolute', {}, field);
  const within = relative(resolve(dataFolder), resolve(folder));
  if (within === '' || !(within.startsWith('..') || isAbsolute(within)))
    return refusal('backup-folder-in-data-folder', { folder }, field);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(join(folder, markName), `SRL Bench: ${stationName}\n`);
    return undefined;
  } catch (error) {
    return { ...(await storageRefusal(error, folder)), field };
  }
};

/** `undefined` where it is the folder that was marked. */
export const backupFolderFault = async (folder: string): Promise<Refusal | undefined> =>
  access(join(folder, markName)).then(
    () => undefined,
    () => refusal('backup-folder-missing', { folder }),
  );

/** On the same disk a backup is lost with the record. */
export const isOnSameDisk = async (folder: string, dataFolder: string): Promise<boolean> =>
  (await stat(folder)).dev === (await stat(dataFolder)).dev;

/** Those of this station, the newest first. */
export const backupsIn = async (folder: string, mark: string): Promise<readonly BackupFile[]> =>
  (await readdir(folder))
    .flatMap((name) => readBackupFileName(mark, name) ?? [])
    .toSorted((a, b) => (a.moment < b.moment ? 1 : -1));

export const removeBackups = async (folder: string, backups: readonly BackupFile[]): Promise<void> => {
  for (const { fileName } of backups) await rm(join(folder, fileName), { force: true });
};
