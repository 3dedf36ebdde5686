/**
 * Stations that sign inspections are killed at random moments while somebody reads along. `LEDGER_KILLS` sets how many times;
 * 300 where it is absent.
 */
import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { productFolder } from '../../src/host/product-folder.ts';
import { readCheckpoint } from '../../src/ledger/checkpoint.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { SqliteConnection } from '../../src/ledger/sqlite/connection.ts';
import { ledgerFileName } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { newFolder, opened } from './sqlite-places.ts';

const kills = Number(process.env.LEDGER_KILLS ?? 300);
/** Stations that go on at the same time, and kills before a station begins anew, so that its record stays short. */
const stations = 4;
const killsOfOne = 25;
/** Events that a station records in one transaction: five of an inspection, then its signature. */
const mostAtOnce = 5;

let program: string;

/** One file starts several times as fast as the modules that it is made of. */
beforeAll(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'ledger-child-'));
  program = join(folder, 'child.cjs');
  await build({
    configFile: false,
    root: productFolder,
    logLevel: 'error',
    ssr: { noExternal: true, external: ['sqlite3'] },
    build: {
      ssr: fileURLToPath(new URL('ledger-child.ts', import.meta.url)),
      outDir: folder,
      rolldownOptions: { output: { format: 'cjs', entryFileNames: 'child.cjs' } },
    },
  });
});
afterAll(() => rm(join(program, '..'), { recursive: true, force: true }));

const station = (folder: string): ChildProcessByStdio<null, Readable, null> =>
  spawn(process.execPath, [program, 'append', folder], {
    env: { ...process.env, NODE_PATH: join(productFolder, 'node_modules') },
    stdio: ['ignore', 'pipe', 'inherit'],
  });

/** Reads along on a connection of its own, and never sees a part of a transaction. */
const readAlong = async (reader: SqliteConnection, until: AbortSignal): Promise<number> => {
  let seen = 0;
  while (!until.aborted) {
    const [row] = await reader.all<{ last: number; events: number; leaves: number }>(
      'select max(seq) as last, count(*) as events, (select size from tree_head) as leaves from event',
    );
    expect(row!.events).toBe(row!.last);
    expect(row!.leaves).toBe(row!.last);
    seen = row!.last;
    await setTimeout(1);
  }
  return seen;
};

interface Acknowledged {
  readonly seq: number;
  readonly sha256: string;
}

/** Lets a station sign until it is killed; what it had acknowledged by then, whole lines only. */
const untilKilled = async (folder: string): Promise<{ acknowledged: Acknowledged[]; seen: number }> => {
  const child = station(folder);
  let output = '';
  child.stdout.on('data', (chunk: Buffer) => {
    output += chunk.toString();
  });
  const closed = once(child, 'close');
  await Promise.race([once(child.stdout, 'data'), closed]);
  const reader = await SqliteConnection.open(join(folder, ledgerFileName));
  reader.waitForLocks(5000);
  const killed = new AbortController();
  const reading = readAlong(reader, killed.signal);
  await setTimeout(Math.random() * 100);
  child.kill('SIGKILL');
  await closed;
  killed.abort();
  const seen = await reading;
  await reader.close();
  const lines = output.slice(0, output.lastIndexOf('\n')).split('\n');
  const acknowledged = lines
    .map((line) => line.split(' '))
    .map(([seq, sha256 = '']) => ({ seq: Number(seq), sha256 }));
  return { acknowledged, seen };
};

const expectAllThere = async (ledger: Ledger, acknowledged: readonly Acknowledged[], seen: number) => {
  const last = acknowledged.at(-1)!.seq;
  const { faults, head } = await ledger.verify();
  expect(faults).toEqual([]);
  expect(head).toEqual(await ledger.head());
  expect(head.size).toBeGreaterThanOrEqual(Math.max(last, seen));
  // One whole transaction more may have reached the disk unacknowledged: of five events, or of one.
  expect([0, 1, mostAtOnce]).toContain(head.size - last);
  const sha256Of = (text = '') => createHash('sha256').update(text).digest('hex');
  await ledger.read(async (reader) => {
    for (const { seq, sha256 } of acknowledged) expect(sha256Of(await reader.eventText(seq))).toBe(sha256);
    const signed = acknowledged.filter(({ seq }) => seq > 5 && (seq - 5) % 6 === 0);
    for (const { seq } of signed)
      expect(await reader.inspection((seq - 5) / 6)).toMatchObject({ state: 'signed' });
  });
  const latest = readCheckpoint((await ledger.latestCheckpoint())!)!;
  expect(latest.size).toBe(head.size - ((head.size - 5) % 6));
};

/** One station after the other, each in a folder of its own. */
const keepKilling = async (times: number): Promise<number> => {
  let signedInAll = 0;
  for (let done = 0; done < times; done += killsOfOne) {
    const folder = await newFolder();
    for (let round = 0; round < Math.min(killsOfOne, times - done); round += 1) {
      const { acknowledged, seen } = await untilKilled(folder);
      const ledger = await opened(folder);
      try {
        await expectAllThere(ledger, acknowledged, seen);
      } finally {
        await ledger.close();
      }
      signedInAll += acknowledged.length;
    }
    await rm(folder, { recursive: true });
  }
  return signedInAll;
};

it(`keeps everything that was acknowledged, and nothing half-written, over ${kills} kills of stations that sign inspections`, async () => {
  const shares = Array.from({ length: stations }, (_, index) => Math.floor((kills + index) / stations));
  const acknowledged = await Promise.all(shares.map(keepKilling));
  expect(acknowledged.reduce((sum, count) => sum + count, 0)).toBeGreaterThan(kills);
}, 900_000);
