/** Faults inside the program, kept beside the data for whoever repairs it; the person at the bench gets a plain sentence. */
import { appendFile, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';

const limitBytes = 1_000_000;

export const faultLogFile = (folder: string): string => join(folder, 'faults.log');

/** Writes to `faults.log` of the data folder and keeps the one before; a log that cannot be written is left alone. */
export const faultLog = (folder: string): ((error: unknown, operation: string) => void) => {
  const path = faultLogFile(folder);
  return (error, operation) => {
    const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
    void write(path, `${new Date().toISOString()} ${operation}\n${what}\n\n`).catch(() => undefined);
  };
};

const write = async (path: string, entry: string): Promise<void> => {
  const size = await stat(path).then(
    (found) => found.size,
    () => 0,
  );
  if (size > limitBytes) await rename(path, `${path}.1`);
  await appendFile(path, entry);
};
