/**
 * Single bytes of a ledger of 2,000 events are changed at random places of its file: each change is named, or leaves every
 * event provably as it was. `LEDGER_FLIPS` sets how many; 10,000 where it is absent.
 */
import { open, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TreeHead } from '../../src/ledger/ledger.ts';
import { SqliteConnection } from '../../src/ledger/sqlite/connection.ts';
import { ledgerFileName } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { verifyLedger } from '../../src/ledger/sqlite/verifier.ts';
import { loadYears } from '../perf/ledger-years.ts';
import { seededRandom } from '../support/seeded-random.ts';
import { freeSpaceOf } from './free-space.ts';
import { newFolder, opened } from './sqlite-places.ts';

const flips = Number(process.env.LEDGER_FLIPS ?? 10_000);
const events = 2000;
/** Of so many flips that leave the events as they were, one is looked at with everything that is derived from them. */
const wholeOnceIn = 50;

/** Files that are changed at the same time, each with its share of the flips. */
const lanes = 3;

/** All events as SQLite gives them, past the ledger. */
const eventBytes = async (path: string): Promise<Buffer> => {
  const database = await SqliteConnection.open(path);
  try {
    const [row] = await database.all<{ bytes: Buffer }>(
      `select cast(group_concat(seq || ' ' || length(bytes) || ' ' || cast(bytes as text), char(10)) as blob) as bytes
        from (select seq, bytes from event order by seq)`,
    );
    return row!.bytes;
  } finally {
    await database.close();
  }
};

interface Outcome {
  /** Changed bytes of free space, each of which left everything sound. */
  free: number;
  /** Other bytes whose change was named by a look at the record alone. */
  named: number;
  /** Other bytes whose change left every event as it was: in what is derived from the events, and where nothing reads. */
  same: number;
  /** Of these, how many were looked at whole, and how many were named then. */
  lookedAtWhole: number;
  namedThen: number;
}

describe(`a ledger of ${events} events`, () => {
  let folder: string;
  let whole: Buffer;
  let head: TreeHead;
  let bytes: Buffer;
  let free: Uint8Array;

  beforeAll(async () => {
    folder = await newFolder();
    const ledger = await opened(folder);
    await loadYears(ledger, events, () => undefined);
    head = await ledger.head();
    await ledger.close();
    const path = join(folder, ledgerFileName);
    // Without a write-ahead log there is one file, and what is in it is all that there is.
    const database = await SqliteConnection.open(path);
    await database.exec('pragma journal_mode = delete');
    await database.close();
    bytes = await eventBytes(path);
    whole = await readFile(path);
    free = freeSpaceOf(whole);
  });
  afterAll(() => rm(folder, { recursive: true }));

  const flipMany = async (lane: number, count: number): Promise<Outcome> => {
    const path = join(folder, `lane-${lane}.sqlite`);
    await writeFile(path, whole);
    const file = await open(path, 'r+');
    const random = seededRandom(20260310 + lane);
    const outcome: Outcome = { free: 0, named: 0, same: 0, lookedAtWhole: 0, namedThen: 0 };
    try {
      for (let flip = 0; flip < count; flip += 1) {
        const at = random.whole(0, whole.length - 1);
        const changed = (whole[at]! + random.whole(1, 255)) % 256;
        await file.write(Buffer.of(changed), 0, 1, at);
        await judge(path, at, `byte ${at} of ${whole.length}, ${whole[at]} to ${changed}`, outcome);
        await file.write(whole, at, 1, at);
      }
    } finally {
      await file.close();
    }
    expect((await readFile(path)).equals(whole)).toBe(true);
    expect((await verifyLedger(path, {})).sound).toBe(true);
    return outcome;
  };

  const judge = async (path: string, at: number, which: string, outcome: Outcome): Promise<void> => {
    const { sound, faults, head: found } = await verifyLedger(path, { extent: 'file' });
    if (!sound) {
      expect(faults.length, which).toBeGreaterThan(0);
      expect(free[at], which).toBe(0);
      outcome.named += 1;
      return;
    }
    expect(found, which).toEqual(head);
    expect((await eventBytes(path)).equals(bytes), which).toBe(true);
    if (free[at] === 1) {
      outcome.free += 1;
      return;
    }
    outcome.same += 1;
    if (outcome.same % wholeOnceIn !== 0) return;
    outcome.lookedAtWhole += 1;
    if (!(await verifyLedger(path, {})).sound) outcome.namedThen += 1;
  };

  it(`shows each of ${flips} changed bytes, or has every event as it was`, async () => {
    expect(head.size).toBeGreaterThan(events * 0.95);
    const shares = Array.from({ length: lanes }, (_, index) => Math.floor((flips + index) / lanes));
    const outcomes = await Promise.all(shares.map((count, lane) => flipMany(lane, count)));
    const sum = (part: keyof Outcome) => outcomes.reduce((total, outcome) => total + outcome[part], 0);
    const freeBytes = free.reduce((total, each) => total + each, 0);
    console.log(
      `${whole.length} bytes, ${freeBytes} of them free. Changed: ${sum('named')} named, ${sum('free')} free, ${sum('same')} others that left every event as it was; of these ${sum('lookedAtWhole')} looked at whole, ${sum('namedThen')} named then.`,
    );
    expect(sum('named') + sum('free') + sum('same')).toBe(flips);
    expect(sum('named')).toBeGreaterThan(flips / 3);
    expect(sum('lookedAtWhole') === 0 || sum('namedThen') > 0).toBe(true);
  }, 1_200_000);
});
