/** Writes a backup: one pass over the record and every kept picture, each hashed on its way. */
import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import type { EvidenceStore } from '../evidence-store.ts';
import { type BackupManifest, evidencePath, manifestPath, recordPath } from './backup-manifest.ts';
import type { BackupControl } from './work-control.ts';

interface ArchiveSource {
  /** A copy of the record that nobody writes to. */
  readonly recordFile: string;
  readonly evidence: EvidenceStore;
  readonly about: Omit<BackupManifest, 'files'>;
}

/** The file must not be there yet; on the disk when the promise resolves. Pictures that are not what was kept are left out. */
export const writeArchive = async (
  file: string,
  { recordFile, evidence, about }: ArchiveSource,
  { signal }: BackupControl,
  onFile: () => void,
): Promise<BackupManifest> => {
  const files: BackupManifest['files'] = [];
  const zip = new ZipFile();
  const failed = new AbortController();
  const stop = AbortSignal.any([signal, failed.signal]);
  const add = (path: string, content: Readable, compress: boolean): Promise<void> =>
    new Promise((resolve, reject) => {
      const hash = createHash('sha256');
      let bytes = 0;
      const hashed = new Transform({
        transform: (chunk: Buffer, _encoding, done) => {
          hash.update(chunk);
          bytes += chunk.length;
          done(null, chunk);
        },
        flush: (done) => {
          files.push({ path, bytes, sha256: hash.digest('hex') });
          onFile();
          done();
          resolve();
        },
      });
      content.once('error', reject);
      zip.addReadStream(content.pipe(hashed), path, { compress });
    });
  const fill = async (): Promise<void> => {
    await add(recordPath, createReadStream(recordFile, { signal: stop }), true);
    for await (const sha256 of evidence.list()) {
      signal.throwIfAborted();
      const picture = await evidence.get(sha256);
      if (typeof picture !== 'string')
        await add(evidencePath(sha256, picture), Readable.from([picture]), false);
    }
    const manifest: BackupManifest = { ...about, files };
    zip.addBuffer(Buffer.from(JSON.stringify(manifest)), manifestPath);
    zip.end();
  };
  const target = createWriteStream(file, { flags: 'wx', flush: true });
  const written = pipeline(zip.outputStream, target, { signal: stop });
  try {
    await Promise.all([written, Promise.race([fill(), written])]);
  } catch (error) {
    failed.abort();
    await written.catch(() => undefined);
    throw error;
  }
  return { ...about, files };
};
