/** Folders for what is under way within a data folder: gone when the work ends, or when the record is opened next. */
import { randomUUID } from 'node:crypto';
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';

const underWayName = 'under-way';

/** The name, within the data folder, of a new folder of its own. */
export const newFolderUnderWay = async (dataFolder: string): Promise<string> => {
  const name = join(underWayName, randomUUID());
  await mkdir(join(dataFolder, name), { recursive: true });
  return name;
};

/** Called while nothing is under way. */
export const clearUnderWay = (dataFolder: string): Promise<void> =>
  rm(join(dataFolder, underWayName), { recursive: true, force: true });
