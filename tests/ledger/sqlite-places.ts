/** Ledgers in data folders of tests, and what changes their files past them. */
import { spawn } from 'node:child_process';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
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
