/** A backup as a record that can be read: unpacked into a folder of its own, and proved. */
import { join } from 'node:path';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { EvidenceFolder } from '../evidence-folder.ts';
import type { Ledger } from '../ledger.ts';
import { ledgerFileName, openSqliteLedger } from '../sqlite/sqlite-ledger.ts';
import type { BackupManifest } from './backup-manifest.ts';
import { readArchive } from './read-archive.ts';
import type { BackupControl } from './work-control.ts';

export interface OpenBackup {
  readonly manifest: BackupManifest;
  /** Whoever opened it closes it. */
  readonly ledger: Ledger;
}

/**
 * Every byte is read and the record verified, event by event. `folder` is empty; pictures are written into it too where
 * `withPictures` says so. Refuses with what `readArchive` refuses, or `backup-record-unsound`.
 */
export const openBackup = async (
  file: string,
  folder: string,
  withPictures: boolean,
  control: BackupControl,
  onFile: () => void,
): Promise<OpenBackup | Refusal> => {
  const evidence = new EvidenceFolder(folder);
  const keepPicture = withPictures ? (bytes: Uint8Array) => evidence.put(bytes) : undefined;
  const manifest = await readArchive(
    file,
    { recordFile: join(folder, ledgerFileName), keepPicture },
    control,
    onFile,
  );
  if (isRefusal(manifest)) return manifest;
  const ledger = await openSqliteLedger(folder);
  if (isRefusal(ledger))
    return ledger.code === 'ledger-damaged' ? refusal('backup-record-unsound', { file }, 'file') : ledger;
  try {
    const { sound, head } = await ledger.verify();
    const isAsListed = head.size === manifest.record.size && head.rootHash === manifest.record.rootHash;
    control.signal.throwIfAborted();
    if (sound && isAsListed) return { manifest, ledger };
    await ledger.close();
    return refusal('backup-record-unsound', { file }, 'file');
  } catch (error) {
    await ledger.close();
    throw error;
  }
};
