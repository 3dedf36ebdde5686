/**
 * One station per data folder: an exclusive lock on a file of the folder, held for as long as the station is open.
 *
 * It is SQLite's own file lock, so the operating system lets go of it when a process ends, however it ends. No other code
 * of the process may open that file: on POSIX systems, closing any handle of a file gives up the process's locks on it.
 */
import { join } from 'node:path';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { SqliteConnection } from './connection.ts';

export const lockFileName = 'station.lock';

export interface FolderLock {
  close(): Promise<void>;
}

/** Refuses at once where another station, in this process or another, holds the folder. */
export const lockFolder = async (folder: string): Promise<FolderLock | Refusal> => {
  const connection = await SqliteConnection.open(join(folder, lockFileName));
  try {
    connection.waitForLocks(0);
    await connection.exec('begin exclusive');
    return connection;
  } catch (error) {
    await connection.close();
    if (error instanceof Error && 'code' in error && error.code === 'SQLITE_BUSY') {
      return refusal('station-already-open', { folder });
    }
    throw error;
  }
};
