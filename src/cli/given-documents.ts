/** Documents and photos that a command names by their files. */
import { basename } from 'node:path';
import { readBytes } from './files.ts';
import type { Job } from './job.ts';

export const givenDocuments = async (
  paths: readonly string[] | undefined,
  { language }: Job,
): Promise<{ name: string; contentBase64: string }[]> => {
  const given = [];
  for (const path of paths ?? [])
    given.push({ name: basename(path), contentBase64: (await readBytes(path, language)).toString('base64') });
  return given;
};
