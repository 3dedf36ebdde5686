/** A folder that comes into being whole: written beside its place, then renamed into it, or gone. */
import { createHash, type Hash, randomUUID } from 'node:crypto';
import { type FileHandle, mkdir, open, readdir, rename, rm, rmdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

export interface WrittenFile {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** One file that is written piece by piece, and on the disk when it is closed. */
export class ExportFile {
  readonly #handle: FileHandle;
  readonly #path: string;
  readonly #hash: Hash = createHash('sha256');
  #bytes = 0;
  #waiting: string[] = [];
  #waitingCharacters = 0;

  constructor(handle: FileHandle, path: string) {
    this.#handle = handle;
    this.#path = path;
  }

  /** Keeps the text until there is enough to write. */
  add(text: string): void {
    this.#waiting.push(text);
    this.#waitingCharacters += text.length;
  }

  get isFull(): boolean {
    return this.#waitingCharacters > 500_000;
  }

  async flush(): Promise<void> {
    const text = this.#waiting.join('');
    this.#waiting = [];
    this.#waitingCharacters = 0;
    if (text !== '') await this.#write(Buffer.from(text));
  }

  async writeAll(bytes: Uint8Array): Promise<void> {
    await this.#write(bytes);
  }

  async close(): Promise<WrittenFile> {
    try {
      await this.flush();
      await this.#handle.sync();
    } finally {
      await this.#handle.close();
    }
    return { path: this.#path, bytes: this.#bytes, sha256: this.#hash.digest('hex') };
  }

  async #write(bytes: Uint8Array): Promise<void> {
    await this.#handle.appendFile(bytes);
    this.#hash.update(bytes);
    this.#bytes += bytes.length;
  }
}

export class ExportFolder {
  readonly #unfinished: string;

  private constructor(unfinished: string) {
    this.#unfinished = unfinished;
  }

  /** Makes the folders that lead there. */
  static async beside(place: string): Promise<ExportFolder> {
    await mkdir(dirname(place), { recursive: true });
    const unfinished = join(dirname(place), `.${basename(place)}.${randomUUID()}.part`);
    await mkdir(unfinished);
    return new ExportFolder(unfinished);
  }

  async open(path: string): Promise<ExportFile> {
    const file = join(this.#unfinished, path);
    await mkdir(dirname(file), { recursive: true });
    return new ExportFile(await open(file, 'ax'), path);
  }

  /** Takes the place, in which nothing or an empty folder may be; false where another export took it meanwhile. */
  async finishAt(place: string): Promise<boolean> {
    try {
      if (await isEmptyFolder(place)) await rmdir(place);
      await rename(this.#unfinished, place);
      return true;
    } catch (error) {
      if (await isFree(place)) throw error;
      return false;
    }
  }

  async giveUp(): Promise<void> {
    await rm(this.#unfinished, { recursive: true, force: true });
  }
}

const isEmptyFolder = async (path: string): Promise<boolean> =>
  readdir(path).then(
    (names) => names.length === 0,
    () => false,
  );

/** Nothing, or an empty folder, stands there. */
export const isFree = async (path: string): Promise<boolean> =>
  readdir(path).then(
    (names) => names.length === 0,
    (error: NodeJS.ErrnoException) => error.code === 'ENOENT',
  );
