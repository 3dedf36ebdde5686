/** Evidence as files of the data folder, each named after the hash of its bytes. */
import { createHash } from 'node:crypto';
import { mkdir, opendir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { EvidenceStore } from './evidence-store.ts';
import { orStorageFault } from './storage-refusal.ts';
import { writeThrough } from './write-through.ts';

export const evidenceFolderName = 'evidence';

const namePattern = /^([0-9a-f]{64})\.jpg$/;
const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

export class EvidenceFolder implements EvidenceStore {
  readonly #folder: string;

  /** `dataFolder` exists; the folder within it is made with the first file. */
  constructor(dataFolder: string) {
    this.#folder = join(dataFolder, evidenceFolderName);
  }

  put(bytes: Uint8Array): Promise<string> {
    return orStorageFault(this.#folder, async () => {
      const sha256 = sha256Of(bytes);
      if (typeof (await this.#read(sha256)) !== 'string') return sha256;
      await mkdir(this.#folder, { recursive: true });
      await writeThrough(this.#path(sha256), bytes);
      return sha256;
    });
  }

  get(sha256: string): Promise<Uint8Array | 'missing' | 'changed'> {
    return orStorageFault(this.#folder, () => this.#read(sha256));
  }

  async *list(): AsyncIterable<string> {
    const folder = await opendir(this.#folder).catch(unlessNoFolder);
    if (folder === undefined) return;
    for await (const { name } of folder) {
      const sha256 = namePattern.exec(name)?.[1];
      if (sha256 !== undefined) yield sha256;
    }
  }

  size(): Promise<{ readonly count: number; readonly bytes: number }> {
    return orStorageFault(this.#folder, async () => {
      let count = 0;
      let bytes = 0;
      for await (const sha256 of this.list()) {
        const file = await stat(this.#path(sha256)).catch(unlessMissing);
        if (file === undefined) continue;
        count += 1;
        bytes += file.size;
      }
      return { count, bytes };
    });
  }

  async #read(sha256: string): Promise<Uint8Array | 'missing' | 'changed'> {
    const bytes = await readFile(this.#path(sha256)).catch(unlessNoFolder);
    if (bytes === undefined) return 'missing';
    return sha256Of(bytes) === sha256 ? bytes : 'changed';
  }

  #path(sha256: string): string {
    return join(this.#folder, `${sha256}.jpg`);
  }
}

const unless =
  (...codes: readonly string[]) =>
  (error: unknown): undefined => {
    if (error instanceof Error && 'code' in error && codes.includes(String(error.code))) return undefined;
    throw error;
  };

const unlessMissing = unless('ENOENT');

/** A file that stands in the place of the folder holds no evidence either. */
const unlessNoFolder = unless('ENOENT', 'ENOTDIR');
