/** Files that a command reads and writes, with a sentence where that fails. */
import { constants } from 'node:fs';
import { access, mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Language } from '../domain/message.ts';
import { refusal } from '../domain/refusal.ts';
import { failureOf, fileFailure } from './failure.ts';

export const readBytes = async (path: string, language: Language): Promise<Buffer> => {
  try {
    return await readFile(path);
  } catch (error) {
    throw fileFailure('read', path, error, language);
  }
};

export const readJson = async (path: string, language: Language): Promise<unknown> => {
  const text = (await readBytes(path, language)).toString('utf8').replace(/^\uFEFF/, '');
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : '';
    throw failureOf(refusal('file-not-json', { path, why }), language);
  }
};

/** Makes the folder of the file where it is missing. */
export const writeBytes = async (path: string, bytes: Uint8Array, language: Language): Promise<void> => {
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, bytes);
  } catch (error) {
    throw fileFailure('write', path, error, language);
  }
};

/** Fails now if `writeBytes` would, so that nothing is recorded for a file that cannot be given. */
export const checkWritable = async (path: string, language: Language): Promise<void> => {
  try {
    await mkdir(dirname(path), { recursive: true });
    await access(dirname(path), constants.W_OK);
    const found = await stat(path).catch(() => undefined);
    if (found?.isDirectory()) throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
    if (found !== undefined) await access(path, constants.W_OK);
  } catch (error) {
    throw fileFailure('write', path, error, language);
  }
};
