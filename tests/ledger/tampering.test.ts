import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Ledger, LedgerFault } from '../../src/ledger/ledger.ts';
import { leafHash } from '../../src/ledger/merkle.ts';
import { SqliteConnection } from '../../src/ledger/sqlite/connection.ts';
import { projectionTables } from '../../src/ledger/sqlite/schema.ts';
import { ledgerFileName, openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import {
  benchId,
  checkedOut,
  codeBound,
  deviceRemoved,
  fallCaseOpened,
  identityOpened,
  inspectedDevice,
  noticeRecorded,
  occasion,
  setUp,
} from './sample-events.ts';
import { newFolder, opened, tamper } from './sqlite-places.ts';

describe('a ledger that was tampered with', () => {
  let folder: string;
  let ledger: Ledger;
  beforeEach(async () => {
    folder = await newFolder();
    ledger = await opened(folder);
    await ledger.append(occasion, async () => [
      ...setUp,
      ...[0, 1, 2, 3].flatMap(inspectedDevice),
      deviceRemoved(benchId(2), 2),
      identityOpened(1),
    ]);
  });
  afterEach(async () => {
    await ledger.close();
    await rm(folder, { recursive: true });
  });

  /** 4 of the set-up, 4 × 6 of the inspected devices, 1 removal, 1 identity case. */
  const size = 30;
  const faults = async (): Promise<readonly LedgerFault[]> => {
    const { sound, faults } = await ledger.verify();
    expect(sound).toBe(faults.length === 0);
    return faults;
  };
  const change = (sql: string) => tamper(folder, (database) => database.exec(sql));

  it('is told from one that was only looked at', async () => {
    await change('select 1');
    expect(await faults()).toEqual([]);
  });

  it('does not let anyone change or remove an event, or put one in out of turn', async () => {
    const database = await SqliteConnection.open(join(folder, ledgerFileName));
    const event = `insert or replace into event select seq, bytes, leaf_hash, bench_id, inspection from event where seq = 3`;
    const gap = `insert into event select 99, bytes, leaf_hash, bench_id, inspection from event where seq = 3`;
    await expect(database.run(`update event set bench_id = 'X' where seq = 3`)).rejects.toThrow(
      'never changed',
    );
    await expect(database.run('delete from event where seq = 3')).rejects.toThrow('never removed');
    await expect(database.run(event)).rejects.toThrow('follow one another');
    await expect(database.run(gap)).rejects.toThrow('follow one another');
    await database.close();
    expect(await faults()).toEqual([]);
  });

  it('shows every single bit that was flipped in the bytes of an event', async () => {
    const database = await SqliteConnection.open(join(folder, ledgerFileName));
    const rows = await database.all<{ seq: number; bytes: Buffer }>('select seq, bytes from event');
    await database.exec('drop trigger event_unchanged');
    for (const { seq, bytes } of rows) {
      const flipped = Buffer.from(bytes);
      const at = Math.floor(Math.random() * flipped.length);
      flipped[at] = flipped[at]! ^ (1 << Math.floor(Math.random() * 8));
      await database.run('update event set bytes = ? where seq = ?', [flipped, seq]);
      const named = await faults();
      expect(named, `byte ${at} of event ${seq}: ${flipped.toString('latin1')}`).toContainEqual({
        kind: 'event changed',
        seq,
      });
      expect(named.filter(({ kind }) => kind === 'tree head does not match')).toHaveLength(1);
      const ofEvents = await ledger.verify({ extent: 'events' });
      expect(ofEvents.faults).toContainEqual({ kind: 'event changed', seq });
      await database.run('update event set bytes = ? where seq = ?', [bytes, seq]);
    }
    await database.close();
    expect(
      (await faults()).map((fault) => (fault.kind === 'database damaged' ? fault.detail : fault.kind)),
    ).toEqual(['schema: event_unchanged is missing or altered']);
  });

  it('shows an event that was rewritten together with its hash, by the subtree over it and the root of the tree', async () => {
    const lines: string[] = [];
    for await (const line of ledger.export()) lines.push(line);
    const forged = Buffer.from(lines[1]!.replace('Inês Caldeira', 'Inez Caldeira'));
    await tamper(folder, async (database) => {
      await database.run('update event set bytes = ?, leaf_hash = ? where seq = 2', [
        forged,
        leafHash(forged),
      ]);
    });
    const named = await faults();
    expect(named.map(({ kind }) => kind)).toEqual([
      'subtree differs',
      'tree head does not match',
      'projection differs',
    ]);
    expect(named[0]).toEqual({ kind: 'subtree differs', lastSeq: 2, events: 2 });
    expect(named).toContainEqual({
      kind: 'projection differs',
      table: 'person',
      key: 'p-ines',
    });
  });

  it.each([
    ['first', 1],
    ['middle', 12],
    ['last', size],
  ])('shows that the %s event was removed', async (_which, seq) => {
    await change(`delete from event where seq = ${seq}`);
    const named = await faults();
    expect(named).toContainEqual({ kind: 'event missing', seq });
    expect(named.some(({ kind }) => kind === 'tree head does not match')).toBe(true);
  });

  it('shows two events that changed places', async () => {
    await change(`
      create temp table two as select * from event where seq in (6, 7);
      update event set bytes = (select bytes from two where two.seq = 13 - event.seq),
        leaf_hash = (select leaf_hash from two where two.seq = 13 - event.seq) where seq in (6, 7)`);
    expect(await faults()).toEqual(
      expect.arrayContaining([
        { kind: 'event changed', seq: 6 },
        { kind: 'event changed', seq: 7 },
      ]),
    );
  });

  it('shows an event that was put in behind the last', async () => {
    await change(
      `insert into event select ${size + 1}, bytes, leaf_hash, bench_id, inspection from event where seq = ${size}`,
    );
    const named = await faults();
    expect(named).toContainEqual({ kind: 'event changed', seq: size + 1 });
    expect(named.some(({ kind }) => kind === 'tree head does not match')).toBe(true);
  });

  it.each([
    ['bench_id', `'${benchId(1)}'`],
    ['bench_id', 'null'],
    ['inspection', '2'],
    ['leaf_hash', 'zeroblob(32)'],
    ['bytes', 'cast(bytes as text) || char(32)'],
  ])('shows a false %s beside an event', async (column, value) => {
    // Event 6 starts inspection 1 of device 0.
    await change(
      `pragma ignore_check_constraints = on; update or ignore event set ${column} = ${column === 'bytes' ? `cast(${value} as blob)` : value} where seq = 6`,
    );
    expect(await faults()).toContainEqual({ kind: 'event changed', seq: 6 });
  });

  it.each([
    'size = size - 1',
    'root_hash = zeroblob(32)',
    "frontier = x''",
    'frontier = zeroblob(length(frontier))',
  ])('shows a false tree head: %s', async (assignment) => {
    await change(`update tree_head set ${assignment}`);
    expect(await faults()).toHaveLength(1);
    expect(await ledger.append(occasion, async () => [codeBound(benchId(1), 'NEW')])).toMatchObject({
      code: 'ledger-damaged',
      values: { folder },
    });
  });

  it.each([
    ['station', `update station set state = replace(state, 'Harrow', 'Barrow')`, '1'],
    ['person', `update person set badge = 'other'`, 'p-ines'],
    ['model_sheet', `update model_sheet set state = replace(state, '140', '141')`, 'kestrel-9'],
    ['device', `update device set standing = 'in service' where bench_id = '${benchId(2)}'`, benchId(2)],
    ['device', `update device set due_on = null where bench_id = '${benchId(1)}'`, benchId(1)],
    ['other_code', `update other_code set bench_id = '${benchId(3)}' where code = 'NF/1/2023'`, 'NF/1/2023'],
    ['other_code', `insert into other_code values ('EXTRA', '${benchId(3)}')`, 'EXTRA'],
    ['inspection', `delete from inspection where inspection = 2`, '2'],
  ])('shows a changed row of %s, and only that', async (table, sql, key) => {
    await change(sql);
    expect(await faults()).toEqual([{ kind: 'projection differs', table, key }]);
    expect((await ledger.verify({ extent: 'events' })).faults).toEqual([]);
    expect(await ledger.rebuild()).toBe(size);
    expect(await faults()).toEqual([]);
  });

  it('shows every projection that was emptied', async () => {
    await ledger.append(occasion, async () => [checkedOut(benchId(0)), fallCaseOpened, noticeRecorded]);
    await change(projectionTables.map((table) => `delete from ${table};`).join(' '));
    const tables = (await faults()).map((fault) =>
      fault.kind === 'projection differs' ? fault.table : fault.kind,
    );
    expect(new Set(tables)).toEqual(new Set(projectionTables));
  });

  it.each([
    ['drop trigger event_kept', 'event_kept is missing or altered'],
    [
      `drop trigger event_kept; create trigger event_kept before delete on event when 0 begin select 1; end`,
      'event_kept is missing or altered',
    ],
    ['create trigger spy after insert on event begin delete from device; end', 'spy does not belong here'],
    ['drop index device_by_serial', 'device_by_serial is missing or altered'],
  ])('shows an altered schema: %s', async (sql, detail) => {
    const database = await SqliteConnection.open(join(folder, ledgerFileName));
    await database.exec(sql);
    await database.close();
    expect(await faults()).toContainEqual({
      kind: 'database damaged',
      detail: `schema: ${detail}`,
    });
  });

  it('goes no further on a ledger whose last event is gone', async () => {
    await change(`delete from event where seq = ${size}`);
    expect(await ledger.append(occasion, async () => [codeBound(benchId(1), 'NEW')])).toMatchObject({
      code: 'ledger-damaged',
    });
  });

  it('shows any changed byte of the file, refuses to open it, or has every event as it was', async () => {
    const exported = async (from: Ledger) => {
      const lines: string[] = [];
      for await (const line of from.export()) lines.push(line);
      return lines;
    };
    const truth = { head: await ledger.head(), lines: await exported(ledger) };
    await ledger.close();
    const file = join(folder, ledgerFileName);
    const whole = await readFile(file);
    const outcomes = { refused: 0, unsound: 0, same: 0 };
    for (let round = 0; round < 150; round += 1) {
      const damaged = Buffer.from(whole);
      const at = round < 50 ? round * 2 : Math.floor(Math.random() * damaged.length);
      damaged[at] = (damaged[at]! + 1 + Math.floor(Math.random() * 255)) % 256;
      await writeFile(file, damaged);
      const suspect = await openSqliteLedger(folder);
      if (isRefusal(suspect)) {
        outcomes.refused += 1;
        continue;
      }
      try {
        const { sound, head } = await suspect.verify();
        if (sound) expect({ head, lines: await exported(suspect) }, `byte ${at}`).toEqual(truth);
        outcomes[sound ? 'same' : 'unsound'] += 1;
      } finally {
        await suspect.close();
      }
    }
    expect(outcomes.refused).toBeGreaterThan(0);
    expect(outcomes.unsound).toBeGreaterThan(0);
    await rm(join(folder, `${ledgerFileName}-wal`), { force: true });
    await rm(join(folder, `${ledgerFileName}-shm`), { force: true });
    await writeFile(file, whole);
    ledger = await opened(folder);
    expect(await faults()).toEqual([]);
  });
});
