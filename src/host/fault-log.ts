/** Faults inside the program and what happened to its windows, kept beside the data for whoever repairs it; the person at the bench gets a plain sentence. */
import { appendFile, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type LoggedEvent, lineOfEvent, linesOfFault } from './log-lines.ts';

const limitBytes = 500_000;
/** The file that is written to, and so many before it. */
const keptFiles = 3;

export const faultLogFile = (folder: string): string => join(folder, 'faults.log');

/** One after another, so that no two of them move the files at once. */
const writing = new Map<string, Promise<void>>();

/** Writes what a fault was to `faults.log` of the data folder; a log that cannot be written is left alone. */
export const faultLog =
  (folder: string): ((error: unknown, operation: string) => void) =>
  (error, operation) =>
    write(folder, linesOfFault(error, operation));

/** The same file, for what is not a fault of ours. */
export const eventLog =
  (folder: string): ((event: LoggedEvent) => void) =>
  (event) =>
    write(folder, lineOfEvent(event));

/** Resolves when everything is written that was to be written by now. */
export const logWritten = (folder: string): Promise<void> => writing.get(folder) ?? Promise.resolve();

const write = (folder: string, lines: string): void => {
  const entry = `${new Date().toISOString()} ${lines}\n`;
  const before = writing.get(folder) ?? Promise.resolve();
  writing.set(
    folder,
    before.then(() => append(faultLogFile(folder), entry)).catch(() => undefined),
  );
};

const append = async (path: string, entry: string): Promise<void> => {
  const size = await stat(path).then(
    (found) => found.size,
    () => 0,
  );
  if (size + entry.length > limitBytes) await moveUp(path);
  await appendFile(path, entry);
};

/** `faults.log` becomes `faults.log.1`, that `faults.log.2`; the oldest is gone. */
const moveUp = async (path: string): Promise<void> => {
  for (let number = keptFiles - 1; number > 0; number -= 1) {
    const from = number === 1 ? path : `${path}.${number - 1}`;
    await rename(from, `${path}.${number}`).catch(() => undefined);
  }
};
