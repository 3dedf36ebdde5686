/** Evidence as files of the data folder, each named after the hash of its bytes and what it is. */
import { createHash } from 'node:crypto';
import { mkdir, opendir, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { evidenceFileName, evidenceFileNames, hashInFileName } from './evidence-name.ts';
import type { EvidenceStore } from './evidence-store.ts';
import { orStorageFault } from './storage-refusal.ts';
import { writeThrough } from './write-through.ts';

export const evidenceFolderName = 'evidence';

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
      const name = evidenceFileName(sha256, bytes);
      await writeThrough(join(this.#folder, name), bytes);
      for (const other of evidenceFileNames(sha256))
        if (other !== name) await rm(join(this.#folder, other), { force: true });
      return sha256;
    });
  }

  get(sha256: string): Promise<Uint8Array | 'missing' | 'changed'> {
    return orStorageFault(this.#folder, () => this.#read(sha256));
  }

  async *list(): AsyncIterable<string> {
    for await (const { sha256 } of this.#files()) yield sha256;
  }

  size(): Promise<{ readonly count: number; readonly bytes: number }> {
    return orStorageFault(this.#folder, async () => {
      let count = 0;
      let bytes = 0;
      for await (const { name } of this.#files()) {
        const file = await stat(join(this.#folder, name)).catch(unlessMissing);
        if (file === undefined) continue;
        count += 1;
        bytes += file.size;
      }
      return { count, bytes };
    });
  }

  /** Each hash once, under whichever of its names comes first. */
  async *#files(): AsyncIterable<{ readonly sha256: string; readonly name: string }> {
    const folder = await opendir(this.#folder).catch(unlessNoFolder);
    if (folder === undefined) return;
    for await (const { name } of folder) {
      const sha256 = hashInFileName(name);
      if (sha256 !== undefined && !(await this.#hasEarlierName(sha256, name))) yield { sha256, name };
    }
  }

  async #hasEarlierName(sha256: string, name: string): Promise<boolean> {
    for (const earlier of evidenceFileNames(sha256)) {
      if (earlier === name) return false;
      if ((await stat(join(this.#folder, earlier)).catch(unlessMissing)) !== undefined) return true;
    }
    return false;
  }

  async #read(sha256: string): Promise<Uint8Array | 'missing' | 'changed'> {
    let found: 'missing' | 'changed' = 'missing';
    for (const name of evidenceFileNames(sha256)) {
      const bytes = await readFile(join(this.#folder, name)).catch(unlessNoFolder);
      if (bytes === undefined) continue;
      if (sha256Of(bytes) === sha256) return bytes;
      found = 'changed';
    }
    return found;
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
