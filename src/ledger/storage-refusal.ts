/** What the disk refuses, as a refusal that a person can act on. */
import { statfs } from 'node:fs/promises';
import { type Refusal, type RefusalCode, refusal } from '../domain/refusal.ts';

/** The storage failed; `refusal` is what to tell the person. Thrown where a refusal cannot be returned. */
export class StorageFault extends Error {
  override readonly name = 'StorageFault';
  readonly refusal: Refusal;

  constructor(refused: Refusal, options?: ErrorOptions) {
    super(`${refused.code}: ${refused.values.folder ?? ''}`, options);
    this.refusal = refused;
  }
}

/** What is stored contradicts itself; `message` says where, for whoever repairs it. */
export class LedgerDamaged extends Error {
  override readonly name = 'LedgerDamaged';
}

/**
 * The refusal behind an error of SQLite or of the file system that concerns a data folder. An error that is neither is a
 * fault of the program, and is thrown again.
 */
export const storageRefusal = async (error: unknown, folder: string): Promise<Refusal> => {
  if (error instanceof StorageFault) return error.refusal;
  if (error instanceof LedgerDamaged) return refusal('ledger-damaged', { folder });
  const code = await refusalCode(error, folder);
  if (code === undefined) throw error;
  return refusal(code, { folder });
};

/** Runs work on a data folder; what the disk refuses is thrown as `StorageFault`. */
export const orStorageFault = async <Result>(
  folder: string,
  work: () => Promise<Result>,
): Promise<Result> => {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StorageFault) throw error;
    throw new StorageFault(await storageRefusal(error, folder), { cause: error });
  }
};

/** Source of the codes: "Result and Error Codes", sqlite.org/rescode.html, and errno(3). */
const refusalCode = async (error: unknown, folder: string): Promise<RefusalCode | undefined> => {
  const code = codeOf(error);
  if (code === undefined) return undefined;
  if (/^SQLITE_(CORRUPT|NOTADB|FORMAT|IOERR_(READ|SHORT_READ|CORRUPTFS))/.test(code)) return 'ledger-damaged';
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT)/.test(code)) return 'disk-full';
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return 'station-already-open';
  if (/^(SQLITE_(IOERR|CANTOPEN))/.test(code))
    return (await isFull(folder)) ? 'disk-full' : 'folder-not-writable';
  if (
    /^(SQLITE_(READONLY|PERM|AUTH)|EACCES|EPERM|EROFS|ENOENT|ENOTDIR|EEXIST|EIO|ENAMETOOLONG|ELOOP)/.test(
      code,
    )
  ) {
    return 'folder-not-writable';
  }
  return undefined;
};

const codeOf = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;

/** SQLite also needs room for its shared memory, 32 KiB at a time, and reports its lack as an I/O error. */
const isFull = async (folder: string): Promise<boolean> => {
  try {
    const { bavail, bsize } = await statfs(folder);
    return bavail * bsize < 32 * 1024;
  } catch {
    return false;
  }
};
