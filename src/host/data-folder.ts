/** Where a station keeps its data: what the person named, else the place that the operating system has for it. */
import { createHash } from 'node:crypto';
import { join, resolve } from 'node:path';
import envPaths from 'env-paths';

const places = envPaths('srl-bench', { suffix: '' });

export interface DataFolder {
  /** Absolute. */
  readonly folder: string;
  /** True where a person named it, and false where it is the one of the operating system. */
  readonly named: boolean;
}

/** `--data DIR` first, then the environment variable `SRL_BENCH_DATA`, then the convention of the operating system. */
export const dataFolder = (option: string | undefined, environment: NodeJS.ProcessEnv): DataFolder => {
  const named = [option, environment.SRL_BENCH_DATA].find((text) => text !== undefined && text.trim() !== '');
  return named === undefined
    ? { folder: places.data, named: false }
    : { folder: resolve(named), named: true };
};

/**
 * Where the window of a data folder keeps what it may lose, such as its size and its language. It lies apart from the
 * data: a folder for each data folder, so that two stations have two windows.
 */
export const windowFolder = (folder: string): string =>
  join(places.cache, `window-${createHash('sha256').update(resolve(folder)).digest('hex').slice(0, 12)}`);
