/** A file for a program that prints only files, gone when the work is done. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const withTemporaryFile = async <Result>(
  name: string,
  content: Uint8Array,
  work: (path: string) => Promise<Result>,
): Promise<Result> => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-print-'));
  try {
    const path = join(folder, name);
    await writeFile(path, content, { mode: 0o600 });
    return await work(path);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
};
