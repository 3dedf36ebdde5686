/** Writes the station's checkpoint where somebody keeps it: a USB stick, a share, another disk. */
import { readFile, stat } from 'node:fs/promises';
import { isAbsolute, join } from 'node:path';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { readCheckpoint } from '../ledger/checkpoint.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { storageRefusal } from '../ledger/storage-refusal.ts';
import { writeThrough } from '../ledger/write-through.ts';
import { keptCheckpoint } from './kept-checkpoint.ts';

export interface WrittenCheckpoint {
  readonly path: string;
  /** How many events it covers. */
  readonly size: number;
  /** How many the one covered that it took the place of. */
  readonly before?: number;
}

/**
 * `place` is absolute: a folder, in which the station has one file of its own, or a file. A checkpoint that is there already is
 * replaced only by one that goes on from it: refuses with `checkpoint-place-taken`, `checkpoint-of-other-station`,
 * `checkpoint-signature-wrong`, `checkpoint-ahead` or `checkpoint-not-of-record`, and with `checkpoint-place-unwritable` or
 * `disk-full`.
 */
export const writeCheckpointTo = async (
  ledger: Ledger,
  place: string,
): Promise<WrittenCheckpoint | Refusal> => {
  if (!isAbsolute(place)) return refusal('path-not-absolute', { path: place }, 'path');
  const note = await ledger.checkpoint();
  if (isRefusal(note)) return note;
  const checkpoint = readCheckpoint(note);
  if (checkpoint === undefined) return refusal('internal-error');
  try {
    const path = (await isFolder(place)) ? join(place, fileNameOf(checkpoint.origin)) : place;
    const before = await replaced(ledger, path);
    if (isRefusal(before)) return before;
    await writeThrough(path, Buffer.from(note));
    return { path, size: checkpoint.size, ...(before === undefined ? {} : { before }) };
  } catch (error) {
    const refused = await storageRefusal(error, place);
    return refused.code === 'disk-full'
      ? refused
      : refusal('checkpoint-place-unwritable', { path: place }, 'path');
  }
};

/** `srl-bench/ID` becomes `srl-bench-ID.checkpoint`; what no file name may hold is left out. */
const fileNameOf = (origin: string): string =>
  `${origin.replace('/', '-').replace(/[^0-9A-Za-z._-]/g, '')}.checkpoint`;

const isFolder = async (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/** How many events the checkpoint covers that is there, if any; a refusal where it must stay. */
const replaced = async (ledger: Ledger, path: string): Promise<number | Refusal | undefined> => {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  });
  if (text === undefined) return undefined;
  if (readCheckpoint(text) === undefined) return refusal('checkpoint-place-taken', { path }, 'path');
  const kept = await keptCheckpoint(ledger, text);
  if (isRefusal(kept)) return kept;
  const growth = await ledger.proveGrowth(text);
  return isRefusal(growth) ? growth : kept.size;
};
