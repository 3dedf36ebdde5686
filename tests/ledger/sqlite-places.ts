/** Data folders for tests: in the temporary folder of the system, or on a small disk of their own. */
import { execFileSync, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestContext } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { SqliteConnection } from '../../src/ledger/sqlite/connection.ts';
import { ledgerFileName, openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';

export const newFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'ledger-'));

export const opened = async (folder: string): Promise<Ledger> => {
  const ledger = await openSqliteLedger(folder);
  if (isRefusal(ledger)) throw new Error(`${ledger.code}: ${JSON.stringify(ledger.values)}`);
  return ledger;
};

/** Changes the file past the ledger, and puts back the triggers that stand in the way of it. */
export const tamper = async (
  folder: string,
  change: (database: SqliteConnection) => Promise<void>,
): Promise<void> => {
  const database = await SqliteConnection.open(join(folder, ledgerFileName));
  try {
    database.waitForLocks(5000);
    const triggers = await database.all<{ name: string; sql: string }>(
      `select name, sql from sqlite_schema where type = 'trigger'`,
    );
    await database.exec(triggers.map(({ name }) => `drop trigger ${name};`).join(' '));
    await change(database);
    for (const { sql } of triggers) await database.exec(sql);
  } finally {
    await database.close();
  }
};

export const spawnStation = (mode: 'open' | 'append', folder: string) =>
  spawn(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(new URL('ledger-child.ts', import.meta.url)), mode, folder],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );

export interface SmallDisk {
  readonly folder: string;
  remount(access: 'ro' | 'rw'): void;
  remove(): Promise<void>;
}

/** A disk of its own; where mounting is not permitted the test is skipped with one line, and fails under `CI=true`. */
export const requireSmallDisk = async (context: TestContext, kibibytes: number): Promise<SmallDisk> => {
  const folder = await newFolder();
  const run = (command: string, ...args: string[]) => execFileSync(command, args, { stdio: 'pipe' });
  try {
    run('mount', '-t', 'tmpfs', '-o', `size=${kibibytes}k`, 'tmpfs', folder);
  } catch (error) {
    await rm(folder, { recursive: true });
    if (process.env.CI === 'true') throw error;
    console.log('Skipped: mounting a small disk is not permitted here.');
    return context.skip();
  }
  return {
    folder,
    remount: (access) => run('mount', '-o', `remount,${access}`, folder),
    remove: async () => {
      run('umount', '--lazy', folder);
      await rm(folder, { recursive: true });
    },
  };
};
