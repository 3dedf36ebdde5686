/** Files that are on the disk, under their name, when the promise resolves. */
import { randomUUID } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Whole or not at all: what stood under that name before stays until the new file takes its place. The folder exists. */
export const writeThrough = async (path: string, bytes: Uint8Array): Promise<void> => {
  const folder = dirname(path);
  const unfinished = join(folder, `${randomUUID()}.part`);
  try {
    const file = await open(unfinished, 'wx');
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(unfinished, path);
    await syncFolder(folder);
  } finally {
    await rm(unfinished, { force: true });
  }
};

/** Puts the new name on the disk too; Windows does so by itself, and opens no folder. */
export const syncFolder = async (path: string): Promise<void> => {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
};
