/** On what a run was made: the machine, the versions of what the product stands on, and the commit. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cpus, totalmem, type } from 'node:os';
import { z } from 'zod';
import { findBrowser } from '../../src/host/browser.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { SqliteConnection } from '../../src/ledger/sqlite/connection.ts';

export const machineSchema = z.object({
  processor: z.string(),
  cores: z.number(),
  memoryGb: z.number(),
  system: z.string(),
  node: z.string(),
  sqlite: z.string(),
  chromium: z.string(),
  /** With `+` at its end where the folder held changes that were not committed. */
  commit: z.string(),
});
export type Machine = z.infer<typeof machineSchema>;

export const thisMachine = async (): Promise<Machine> => {
  const [cpu] = cpus();
  const browser = await findBrowser();
  const dirty = said('git', ['status', '--porcelain', '--untracked-files=no']) !== '';
  const commit = said('git', ['rev-parse', '--short=12', 'HEAD']);
  return {
    processor: cpu?.model.trim() ?? 'unknown',
    cores: cpus().length,
    memoryGb: Math.round(totalmem() / 2 ** 30),
    system: systemName(),
    node: process.version,
    sqlite: await sqliteVersion(),
    chromium: browser === undefined ? 'none' : said(browser, ['--version']),
    commit: commit === '' ? 'none' : `${commit}${dirty ? '+' : ''}`,
  };
};

const sqliteVersion = async (): Promise<string> => {
  const connection = await SqliteConnection.open(':memory:');
  const [row] = await connection.all<{ version: string }>('select sqlite_version() as version');
  await connection.close();
  return row?.version ?? 'unknown';
};

/** As the distribution calls itself, else the kind of the system. */
const systemName = (): string => {
  try {
    return /^PRETTY_NAME="?([^"\n]*)/m.exec(readFileSync('/etc/os-release', 'utf8'))?.[1] ?? type();
  } catch {
    return type();
  }
};

/** What a program prints; nothing where it is missing or fails. */
const said = (program: string, args: readonly string[]): string => {
  try {
    return execFileSync(program, [...args], {
      cwd: productFolder,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }).trim();
  } catch {
    return '';
  }
};
