/**
 * The door of a data folder. The browser keeps what a window remembers by its address, port included; so the port stays the
 * same while it is free. It is no secret: any program of this PC can see it, and what lets in is the key.
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { windowFolder } from './data-folder.ts';
import { type Doorway, openDoorway } from './doorway.ts';

/** At the port that is asked for, and at no other; else at the last one, or at any. `undefined` where it cannot be had. */
export const openOwnDoor = async (folder: string, port: number | undefined): Promise<Doorway | undefined> => {
  if (port !== undefined) return openDoorway(port).catch(() => undefined);
  const last = await lastPort(folder);
  const again = last === undefined ? undefined : await openDoorway(last).catch(() => undefined);
  return again ?? openDoorway(0).catch(() => undefined);
};

const portFile = (folder: string): string => join(windowFolder(folder), 'port');

const lastPort = async (folder: string): Promise<number | undefined> => {
  const port = Number(await readFile(portFile(folder), 'utf8').catch(() => ''));
  return Number.isInteger(port) && port > 1023 && port < 65_536 ? port : undefined;
};

export const keepPort = async (folder: string, port: number): Promise<void> => {
  try {
    await mkdir(dirname(portFile(folder)), { recursive: true });
    await writeFile(portFile(folder), String(port));
  } catch {
    // A window that forgets its language is no reason not to open.
  }
};
