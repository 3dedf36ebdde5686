/** A backup from the beginning to its event, and the ones that it supersedes gone. */
import { access } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { decideBackupMade } from '../../domain/decide/keeping.ts';
import type { Occasion } from '../../domain/event.ts';
import type { Station } from '../../domain/evolve.ts';
import { type BackupMade, backupFileName, supersededBackups } from '../../domain/keeping.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { takeBackup } from '../../ledger/backup/take-backup.ts';
import type { EvidenceStore } from '../../ledger/evidence-store.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import { stationIn } from '../lookup.ts';
import type { WorkControl } from '../work-jobs.ts';
import { backupFolderFault, backupsIn, isOnSameDisk, removeBackups, stationMark } from './backup-folder.ts';

export interface BackupOutcome extends BackupMade {
  readonly file: string;
  /** Earlier ones that are no longer kept. */
  readonly removed: number;
  readonly onSameDisk: boolean;
}

export interface BackupRequest {
  readonly ledger: Ledger;
  readonly evidence: EvidenceStore;
  readonly dataFolder: string;
  occasion(station: Station): Occasion;
  /** Absolute; in the folder for backups, and under a name of its own, where it is absent. */
  readonly file?: string | undefined;
}

export const makeBackup = async (
  request: BackupRequest,
  control: WorkControl,
): Promise<BackupOutcome | Refusal> => {
  const { ledger, evidence, dataFolder } = request;
  const station = await ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const occasion = request.occasion(station);
  const file = request.file ?? (await nextFile(station, occasion));
  if (isRefusal(file)) return file;
  if (!isAbsolute(file)) return refusal('backup-folder-not-absolute', {}, 'file');
  if (await exists(file)) return refusal('backup-file-exists', { file }, 'file');
  const { stationId, name } = station;
  try {
    const about = { madeAt: occasion.at, station: { stationId, name } };
    const taken = await takeBackup(file, { ledger, evidence, dataFolder, about }, control);
    if (isRefusal(taken)) return taken;
    const backup: BackupMade = { fileName: basename(file), ...taken };
    const recorded = await ledger.append(occasion, async () => decideBackupMade(backup));
    if (isRefusal(recorded)) return recorded;
    const onSameDisk = await isOnSameDisk(dirname(file), dataFolder);
    const removed = request.file === undefined ? await removeSuperseded(station) : 0;
    return { file, ...backup, removed, onSameDisk };
  } catch (error) {
    return control.signal.aborted ? refusal('backup-canceled') : storageRefusal(error, dirname(file));
  }
};

const nextFile = async ({ keeping, stationId }: Station, { at }: Occasion): Promise<string | Refusal> => {
  if (keeping === undefined) return refusal('keeping-not-set', {}, 'file');
  const fault = await backupFolderFault(keeping.backupFolder);
  return fault ?? join(keeping.backupFolder, backupFileName(stationMark(stationId), at));
};

const removeSuperseded = async ({ keeping, stationId }: Station): Promise<number> => {
  if (keeping === undefined) return 0;
  const { backupFolder } = keeping;
  const superseded = supersededBackups(await backupsIn(backupFolder, stationMark(stationId)), keeping);
  await removeBackups(backupFolder, superseded);
  return superseded.length;
};

const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );
