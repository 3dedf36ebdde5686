import { rm } from 'node:fs/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readCheckpoint, type SignedCheckpoint } from '../../src/ledger/checkpoint.ts';
import {
  checkpointKeyFrom,
  checkpointKeyOf,
  newCheckpointSecret,
  signCheckpoint,
} from '../../src/ledger/checkpoint-key.ts';
import type { Ledger, LedgerFault } from '../../src/ledger/ledger.ts';
import { emptyFrontier, frontierBytes, leafHash, rootHash, withLeaf } from '../../src/ledger/merkle.ts';
import { SqliteConnection } from '../../src/ledger/sqlite/connection.ts';
import { inspectedDevice, occasion, setUp } from './sample-events.ts';
import { newFolder, opened, tamper } from './sqlite-places.ts';

describe('a record with checkpoints that was tampered with', () => {
  let folder: string;
  let ledger: Ledger;
  let kept: SignedCheckpoint;
  beforeEach(async () => {
    folder = await newFolder();
    ledger = await opened(folder);
    const { publicKey } = await checkpointKeyOf(ledger);
    await ledger.append(occasion, async () => [...setUp, { type: 'station.key-made', publicKey }]);
    for (let n = 0; n < 4; n += 1) await ledger.append(occasion, async () => inspectedDevice(n));
    kept = readCheckpoint((await ledger.latestCheckpoint())!)!;
  });
  afterEach(async () => {
    await ledger.close();
    await rm(folder, { recursive: true });
  });

  /** 5 of the set-up, 4 × 6 of the inspected devices; checkpoints over 5, 11, 17, 23 and 29. */
  const size = 29;
  const change = (sql: string) => tamper(folder, (database) => database.exec(sql));
  const faults = async (): Promise<readonly LedgerFault[]> => (await ledger.verify()).faults;

  it('is sound before that', async () => {
    expect(await ledger.verify({ kept })).toMatchObject({ sound: true, checkpoints: 5, head: { size } });
  });

  it.each([
    [
      'its root',
      (note: string) =>
        note.replace(/\n17\n./, (found) => `${found.slice(0, -1)}${found.endsWith('A') ? 'B' : 'A'}`),
    ],
    ['its size', (note: string) => note.replace('\n17\n', '\n16\n')],
    ['its origin', (note: string) => note.replaceAll('harrow', 'barrow')],
    [
      'the first half of its signature',
      (note: string) => `${note.slice(0, -70)}${note.at(-70) === 'A' ? 'B' : 'A'}${note.slice(-69)}`,
    ],
    [
      'its signature',
      (note: string) => `${note.slice(0, -20)}${note.at(-20) === 'A' ? 'B' : 'A'}${note.slice(-19)}`,
    ],
    ['its form', () => 'a note'],
  ])('shows the one checkpoint that was changed in %s', async (_what, changed) => {
    const [, , { note } = { note: '' }] = await ledger.checkpoints(5);
    await tamper(folder, (database) =>
      database.run('update checkpoint set note = ? where size = 17', [changed(note)]).then(() => undefined),
    );
    const differs = [{ kind: 'checkpoint differs', size: 17 }];
    expect(await faults()).toEqual(differs);
    expect((await ledger.verify({ extent: 'events' })).faults).toEqual(differs);
  });

  it('shows a checkpoint whose note is no text any more', async () => {
    await change(`
      pragma writable_schema = on;
      update sqlite_schema set sql = replace(sql, 'note text not null) strict', 'note)') where name = 'checkpoint';
      pragma writable_schema = reset;
      update checkpoint set note = null where size = 17`);
    await change(`
      pragma writable_schema = on;
      update sqlite_schema set sql = replace(sql, 'note)', 'note text not null) strict') where name = 'checkpoint';
      pragma writable_schema = off`);
    expect(await faults()).toContainEqual({ kind: 'checkpoint differs', size: 17 });
  });

  it('shows a checkpoint that another key signed', async () => {
    const { size: covered, rootHash } = readCheckpoint((await ledger.latestCheckpoint())!)!;
    const forged = signCheckpoint('harrow-point', checkpointKeyFrom(newCheckpointSecret()), {
      size: covered,
      rootHash,
    });
    await tamper(folder, (database) =>
      database.run(`update checkpoint set note = ? where size = ${size}`, [forged]).then(() => undefined),
    );
    expect(await faults()).toEqual([{ kind: 'checkpoint differs', size }]);
  });

  it('shows a checkpoint over more than is recorded', async () => {
    const forged = signCheckpoint('harrow-point', await checkpointKeyOf(ledger), {
      size: 40,
      rootHash: kept.rootHash,
    });
    await tamper(folder, (database) =>
      database.run('insert into checkpoint values (40, ?)', [forged]).then(() => undefined),
    );
    expect(await faults()).toEqual([{ kind: 'checkpoint differs', size: 40 }]);
  });

  it.each([
    ['update subtree set hashes = zeroblob(32) where last_seq = 6', 6, 2],
    // Event 8 ends the subtrees of 2, 4 and 8 events: the third of its hashes is over all 8.
    [
      `update subtree set hashes = cast(substr(hashes, 1, 64) || zeroblob(32) as blob) where last_seq = 8`,
      8,
      8,
    ],
    ['update subtree set hashes = cast(hashes || zeroblob(32) as blob) where last_seq = 6', 6, 2],
    ['delete from subtree where last_seq = 10', 10, 2],
    ['insert into subtree values (30, zeroblob(32))', 30, 2],
    ['insert into subtree values (9, zeroblob(32))', 9, 2],
  ])('shows a false subtree: %s', async (sql, lastSeq, events) => {
    await change(sql);
    expect(await faults()).toContainEqual({ kind: 'subtree differs', lastSeq, events });
    expect((await faults()).every(({ kind }) => kind === 'subtree differs')).toBe(true);
  });

  it('does not let anyone change or remove a subtree or a checkpoint, or put one in out of turn', async () => {
    const database = await SqliteConnection.open(`${folder}/ledger.sqlite`);
    for (const [sql, why] of [
      ['update subtree set hashes = zeroblob(32)', 'never changed'],
      ['delete from subtree', 'never removed'],
      ['insert or replace into subtree values (6, zeroblob(32))', 'follow one another'],
      [`update checkpoint set note = ''`, 'never changed'],
      ['delete from checkpoint', 'never removed'],
      [`insert or replace into checkpoint values (17, '')`, 'covers more'],
    ] as const)
      await expect(database.run(sql)).rejects.toThrow(why);
    await database.close();
    expect(await faults()).toEqual([]);
  });

  /** Takes the last events away with everything that says they were there, as whoever knows the program would. */
  const forget = async (last: number) => {
    const lines: string[] = [];
    for await (const line of ledger.export()) lines.push(line);
    await ledger.close();
    await change(`
      delete from event where seq > ${last}; delete from subtree where last_seq > ${last};
      delete from checkpoint where size > ${last};
      delete from inspection where inspection > 3; delete from other_code where code = 'NF/3/2023';
      delete from device where bench_id not in (select bench_id from inspection)`);
    const tree = lines
      .slice(0, last)
      .reduce((frontier, line) => withLeaf(frontier, leafHash(Buffer.from(line))), emptyFrontier);
    await tamper(folder, (database) =>
      database
        .run('update tree_head set size = ?, root_hash = ?, frontier = ?', [
          last,
          rootHash(tree),
          frontierBytes(tree),
        ])
        .then(() => undefined),
    );
    ledger = await opened(folder);
  };

  it('looks sound by itself where its end was taken away whole, and shows that against a kept checkpoint', async () => {
    const note = (await ledger.latestCheckpoint())!;
    await forget(23);
    expect(await ledger.verify()).toMatchObject({ sound: true, head: { size: 23 } });
    expect((await ledger.verify({ kept })).faults).toEqual([
      { kind: 'record lost events', covered: size, recorded: 23 },
    ]);
    expect(await ledger.proveGrowth(note)).toMatchObject({ code: 'checkpoint-ahead' });
  });

  it('shows against a kept checkpoint that other events were recorded in the place of those taken away', async () => {
    const note = (await ledger.latestCheckpoint())!;
    await forget(23);
    await ledger.append(occasion, async () => inspectedDevice(9));
    await ledger.append(occasion, async () => inspectedDevice(8));
    expect((await ledger.verify()).sound).toBe(true);
    expect((await ledger.verify({ kept })).faults).toEqual([{ kind: 'record rewritten', covered: size }]);
    expect(await ledger.proveGrowth(note)).toMatchObject({ code: 'checkpoint-not-of-record' });
  });
});
