/** Reads a backup: every byte against the list within it, whatever the archive claims of itself. */
import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import type { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { pipeline } from 'node:stream/promises';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import {
  type BackupManifest,
  backupManifestSchema,
  backupVersion,
  evidenceHash,
  manifestPath,
  recordPath,
} from './backup-manifest.ts';
import type { BackupControl } from './work-control.ts';

export interface ArchiveTarget {
  /** Where the record goes; the file is made or replaced. */
  readonly recordFile: string;
  /** Given every picture that has the hash of its name; absent where pictures are only to be checked. */
  readonly keepPicture?: ((bytes: Uint8Array) => Promise<unknown>) | undefined;
}

/** The list of a backup, as the archive has it. Refuses with `backup-not-readable` or `backup-from-newer-version`. */
export const readManifest = async (file: string): Promise<BackupManifest | Refusal> => {
  const opened = await openArchive(file);
  if (isRefusal(opened)) return opened;
  opened.archive.close();
  return opened.manifest;
};

/**
 * Unpacks the record, and reads every picture. Refuses with what `readManifest` refuses, or with `backup-damaged` where a
 * file is missing, has other bytes than the list says, or is on no list. Throws where it is canceled, or the disk refuses.
 */
export const readArchive = async (
  file: string,
  target: ArchiveTarget,
  { signal }: BackupControl,
  onFile: () => void,
): Promise<BackupManifest | Refusal> => {
  const opened = await openArchive(file);
  if (isRefusal(opened)) return opened;
  const { archive, entries, manifest } = opened;
  try {
    const listed = new Map(manifest.files.map((each) => [each.path, each]));
    for (const entry of entries) {
      signal.throwIfAborted();
      const path = entry.fileName;
      if (path === manifestPath) continue;
      const expected = listed.get(path);
      listed.delete(path);
      const isWhole =
        expected?.bytes === entry.uncompressedSize &&
        (path === recordPath || evidenceHash(path) === expected.sha256) &&
        (await hashOf(archive, entry, target, signal)) === expected.sha256;
      if (!isWhole) return refusal('backup-damaged', { file, path }, 'file');
      onFile();
    }
    const [missing] = listed.keys();
    return missing === undefined ? manifest : refusal('backup-damaged', { file, path: missing }, 'file');
  } finally {
    archive.close();
  }
};

interface OpenArchive {
  readonly archive: ZipFile;
  readonly entries: readonly Entry[];
  readonly manifest: BackupManifest;
}

/** What a backup never is, so that a trap is seen before it has filled the memory or the disk. */
const mostManifestBytes = 64 * 1024 * 1024;
const mostEntries = 500_000;
/** The largest picture or document that the station takes is 20 MB. */
const mostEvidenceBytes = 24_000_000;
/** Hashes and canonical JSON shrink by a factor of ten or so; runs of one byte by a thousand (RFC 1951). */
const mostShrinkage = 100;
/** Below it nothing is worth a trap. */
const harmlessBytes = 1_000_000;

const isTrap = ({ uncompressedSize, compressedSize, fileName }: Entry): boolean =>
  (uncompressedSize > harmlessBytes && uncompressedSize > mostShrinkage * compressedSize) ||
  (evidenceHash(fileName) !== undefined && uncompressedSize > mostEvidenceBytes) ||
  (fileName === manifestPath && uncompressedSize > mostManifestBytes);

const openArchive = async (file: string): Promise<OpenArchive | Refusal> => {
  const notReadable = refusal('backup-not-readable', { file }, 'file');
  let archive: ZipFile | undefined;
  try {
    archive = await yauzl.openPromise(file, { autoClose: false });
    const entries: Entry[] = [];
    if (archive.entryCount > mostEntries) throw new NoBackup();
    for await (const entry of archive.eachEntry()) {
      if (isTrap(entry)) throw new NoBackup();
      entries.push(entry);
    }
    const list = entries.find(({ fileName }) => fileName === manifestPath);
    if (list === undefined) throw new NoBackup();
    const text = (await buffer(await archive.openReadStreamPromise(list))).toString('utf8');
    const manifest = backupManifestSchema.safeParse(JSON.parse(text));
    if (!manifest.success) throw new NoBackup();
    if (!manifest.data.files.some(({ path }) => path === recordPath)) throw new NoBackup();
    if (manifest.data.version > backupVersion) {
      archive.close();
      return refusal('backup-from-newer-version', { file }, 'file');
    }
    return { archive, entries, manifest: manifest.data };
  } catch {
    archive?.close();
    return notReadable;
  }
};

class NoBackup extends Error {
  override readonly name = 'NoBackup';
}

/** The hash of what an entry unpacks to, or what was wrong with it; a picture is kept only once its hash is that of its name. */
const hashOf = async (
  archive: ZipFile,
  entry: Entry,
  { recordFile, keepPicture }: ArchiveTarget,
  signal: AbortSignal,
): Promise<string | undefined> => {
  try {
    const content = await archive.openReadStreamPromise(entry);
    if (entry.fileName === recordPath) return await unpacked(content, recordFile, signal);
    const bytes = await buffer(content);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    if (sha256 === evidenceHash(entry.fileName)) await keepPicture?.(bytes);
    return sha256;
  } catch (error) {
    if (signal.aborted || isOfTheDisk(error)) throw error;
    return undefined;
  }
};

const unpacked = async (content: Readable, file: string, signal: AbortSignal): Promise<string> => {
  const hash = createHash('sha256');
  content.on('data', (chunk: Buffer) => hash.update(chunk));
  await pipeline(content, createWriteStream(file, { flush: true }), { signal });
  return hash.digest('hex');
};

/** Errors of the archive have no code of errno(3), or one of zlib. */
const isOfTheDisk = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && /^E[A-Z]+$/.test(String(error.code));
