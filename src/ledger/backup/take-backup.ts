/** Makes a backup while the station works, and believes it only once it was read back. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { BackupMade } from '../../domain/keeping.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import type { EvidenceStore } from '../evidence-store.ts';
import type { Ledger } from '../ledger.ts';
import { openSqliteLedger } from '../sqlite/sqlite-ledger.ts';
import { syncFolder } from '../write-through.ts';
import { type BackupManifest, backupVersion, recordPath } from './backup-manifest.ts';
import { openBackup } from './open-backup.ts';
import { newFolderUnderWay } from './under-way.ts';
import type { BackupControl } from './work-control.ts';
import { writeArchive } from './write-archive.ts';

export interface BackupSource {
  readonly ledger: Ledger;
  readonly evidence: EvidenceStore;
  readonly dataFolder: string;
  readonly about: Pick<BackupManifest, 'madeAt' | 'station'>;
}

export type TakenBackup = Omit<BackupMade, 'fileName'>;

/**
 * Copies the record, writes the archive beside its place, unpacks and verifies it, and only then gives it its name. Nothing
 * of it stays where that fails or is canceled, which throws. Refuses with what `openBackup` refuses.
 */
export const takeBackup = async (
  file: string,
  { ledger, evidence, dataFolder, about }: BackupSource,
  control: BackupControl,
): Promise<TakenBackup | Refusal> => {
  const work = join(dataFolder, await newFolderUnderWay(dataFolder));
  const part = `${file}.part`;
  try {
    await mkdir(dirname(file), { recursive: true });
    const recordFile = join(work, recordPath);
    await ledger.copyTo(recordFile);
    control.signal.throwIfAborted();
    let pictures = 0;
    for await (const _ of evidence.list()) pictures += 1;
    const of = 2 * (pictures + 1);
    let done = 0;
    const onFile = (): void => control.onProgress({ done: ++done, of });
    control.onProgress({ done, of });
    const record = await headOf(work);
    if (isRefusal(record)) return record;
    await rm(part, { force: true });
    const manifest = await writeArchive(
      part,
      {
        recordFile,
        evidence,
        about: { format: 'SRL Bench backup', version: backupVersion, ...about, record },
      },
      control,
      onFile,
    );
    await rm(recordFile);
    const proof = join(work, 'proof');
    await mkdir(proof);
    const opened = await openBackup(part, proof, false, control, onFile);
    if (isRefusal(opened)) return opened;
    await opened.ledger.close();
    const made = { bytes: (await stat(part)).size, sha256: await sha256Of(part), record };
    await rename(part, file);
    await syncFolder(dirname(file));
    return { ...made, pictures: manifest.files.length - 1 };
  } finally {
    await rm(part, { force: true });
    await rm(work, { recursive: true, force: true });
  }
};

/** Of the copy, which may be of a later state than the one at which it was asked for. */
const headOf = async (folder: string) => {
  const copy = await openSqliteLedger(folder);
  if (isRefusal(copy)) return copy;
  try {
    return await copy.head();
  } finally {
    await copy.close();
  }
};

const sha256Of = async (file: string): Promise<string> => {
  const hash = createHash('sha256');
  await pipeline(createReadStream(file), hash);
  return hash.digest('hex');
};
