/** Opens a backup, proves it and holds it against what is here, before anybody decides to restore it. */
import { rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { decideRestore } from '../../domain/decide/keeping.ts';
import type { Station } from '../../domain/evolve.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { BackupManifest } from '../../ledger/backup/backup-manifest.ts';
import { compareRecords, type RecordComparison } from '../../ledger/backup/compare-records.ts';
import { openBackup } from '../../ledger/backup/open-backup.ts';
import { newFolderUnderWay } from '../../ledger/backup/under-way.ts';
import { EvidenceFolder } from '../../ledger/evidence-folder.ts';
import type { Ledger, TreeHead } from '../../ledger/ledger.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import { checkPictures } from '../picture-faults.ts';
import type { WorkControl } from '../work-jobs.ts';

/** A backup that stands ready beside the record. */
export interface PreparedRestore {
  /** Its folder, within the data folder. */
  readonly prepared: string;
  readonly fileName: string;
  readonly station: Pick<Station, 'stationId' | 'name'>;
  readonly madeAt: BackupManifest['madeAt'];
  readonly record: TreeHead;
  readonly devices: number;
  readonly pictures: number;
  /** Pictures that the record names and that are not in the backup as they were kept. */
  readonly picturesLost: number;
  /** With the record that is here, which comes first; absent where there is none. */
  readonly comparison?: RecordComparison & { readonly here: TreeHead };
}

export interface RestoreSource {
  readonly ledger: Ledger;
  readonly dataFolder: string;
  /** Absolute. */
  readonly file: string;
}

export const prepareRestore = async (
  source: RestoreSource,
  control: WorkControl,
): Promise<PreparedRestore | Refusal> => {
  const { dataFolder } = source;
  let prepared: string | undefined;
  try {
    prepared = await newFolderUnderWay(dataFolder);
    const result = await openedIn(prepared, source, control);
    if (isRefusal(result)) await rm(join(dataFolder, prepared), { recursive: true, force: true });
    return result;
  } catch (error) {
    if (prepared !== undefined) await rm(join(dataFolder, prepared), { recursive: true, force: true });
    return control.signal.aborted ? refusal('restore-canceled') : storageRefusal(error, dataFolder);
  }
};

const openedIn = async (
  prepared: string,
  { ledger, dataFolder, file }: RestoreSource,
  control: WorkControl,
): Promise<PreparedRestore | Refusal> => {
  const folder = join(dataFolder, prepared);
  let done = 0;
  const onFile = (): void => control.onProgress({ done: ++done, of: 0 });
  const opened = await openBackup(file, folder, true, control, onFile);
  if (isRefusal(opened)) return opened;
  const { manifest, ledger: backup } = opened;
  try {
    const here = await ledger.read((reader) => reader.station());
    const refused = decideRestore(here, manifest.station);
    if (refused !== undefined) return refused;
    const { faults } = await checkPictures(backup, new EvidenceFolder(folder));
    const { total } = await backup.read((reader) => reader.devices({ limit: 1, offset: 0 }));
    return {
      prepared,
      fileName: basename(file),
      station: manifest.station,
      madeAt: manifest.madeAt,
      record: manifest.record,
      devices: total,
      pictures: manifest.files.length - 1,
      picturesLost: faults.length,
      ...(here === undefined
        ? {}
        : { comparison: { ...(await compareRecords(ledger, backup)), here: await ledger.head() } }),
    };
  } finally {
    await backup.close();
  }
};
