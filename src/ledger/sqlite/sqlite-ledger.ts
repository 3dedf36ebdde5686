/** The ledger in an SQLite file of the data folder. */
import { constants } from 'node:fs';
import { access, mkdir, open } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { Kysely } from 'kysely';
import type { Decision } from '../../domain/decide/decision.ts';
import type { Occasion, RecordedEvent } from '../../domain/event.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { settleRestore } from '../backup/put-in-place.ts';
import { clearUnderWay } from '../backup/under-way.ts';
import { readCheckpoint } from '../checkpoint.ts';
import type {
  Credential,
  KeptCheckpoint,
  Ledger,
  LedgerReader,
  SideWriter,
  TreeHead,
  Verification,
  VerifyOptions,
} from '../ledger.ts';
import { LedgerDamaged, orStorageFault, storageRefusal } from '../storage-refusal.ts';
import { SqliteConnection } from './connection.ts';
import { SqliteDialect } from './dialect.ts';
import { recordedFrom } from './event-row.ts';
import { lockFileName, lockFolder } from './lock.ts';
import { batchSize, project } from './projector.ts';
import { Prover } from './prover.ts';
import { SqliteReader } from './reader.ts';
import { Recorder } from './recorder.ts';
import {
  isEmpty,
  type LedgerDatabase,
  type LedgerTables,
  migrate,
  projectionTables,
  schemaVersion,
  versionOf,
} from './schema.ts';
import { verifyLedger } from './verifier.ts';

export const ledgerFileName = 'ledger.sqlite';

/** `synchronous = full` makes every commit wait for the disk; the other numbers bound memory and what the log may keep. */
const writerSettings = `
  pragma journal_mode = wal;
  pragma synchronous = full;
  pragma foreign_keys = on;
  pragma journal_size_limit = 4194304;
  pragma cache_size = -8000;
`;
const readerSettings = `
  pragma query_only = on;
  pragma cache_size = -16000;
`;
const lockWaitMs = 5000;

/**
 * Opens the ledger of a data folder, which is created where it is missing, and holds the folder until `close`. Refuses with
 * `station-already-open`, `folder-not-writable`, `disk-full`, `ledger-damaged` or `ledger-from-newer-version`; each
 * names the `folder`. `append` and `appendAll` return the first four as well; all else throws them as `StorageFault`. The
 * projections of a file of an older version are made again from the events, for they may say more in this one.
 */
export const openSqliteLedger = async (folder: string): Promise<Ledger | Refusal> => {
  const path = resolve(folder);
  const opened: { close(): Promise<void> }[] = [];
  const release = async () => {
    for (const open of opened.splice(0).toReversed()) await open.close();
  };
  try {
    await mkdir(path, { recursive: true });
    await writable(path);
    const lock = await lockFolder(path);
    if (isRefusal(lock)) return lock;
    opened.push(lock);
    await settleRestore(path, ledgerFileName);
    await clearUnderWay(path);
    const file = join(path, ledgerFileName);
    const wasLeftOpen = await isThere(`${file}-wal`);
    const writer = await SqliteConnection.open(file);
    opened.push(writer);
    writer.waitForLocks(lockWaitMs);
    await writer.exec(writerSettings);
    if (wasLeftOpen) await checkFile(writer);
    const version = await versionOf(writer);
    if (version > schemaVersion) {
      await release();
      return refusal('ledger-from-newer-version', { folder: path });
    }
    if (version < 0 || (version === 0 && !(await isEmpty(writer))))
      throw new LedgerDamaged('The file is no ledger.');
    await migrate(writer);
    const reader = await SqliteConnection.open(file);
    opened.push(reader);
    reader.waitForLocks(lockWaitMs);
    await reader.exec(readerSettings);
    const ledger = new SqliteLedger(path, writer, reader, release);
    if (version > 0 && version < schemaVersion) await ledger.rebuild();
    return ledger;
  } catch (error) {
    await release();
    return storageRefusal(error, path);
  }
};

/** SQLite falls back to reading where it cannot write, and a lock for reading keeps nobody out. */
const writable = async (folder: string): Promise<void> => {
  await access(folder, constants.W_OK);
  for (const name of [lockFileName, ledgerFileName]) {
    const file = join(folder, name);
    if (await isThere(file)) await access(file, constants.R_OK | constants.W_OK);
  }
};

const isThere = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  );

/**
 * SQLite leaves its log beside a file that nobody closed: the program or the PC broke down. Before anything more is recorded
 * then, the whole file is read once. Throws `LedgerDamaged` where its pages do not fit each other.
 */
const checkFile = async (connection: SqliteConnection): Promise<void> => {
  const rows = await connection.all<{ quick_check: string }>('pragma quick_check(1)');
  const [detail] = rows.map((row) => row.quick_check);
  if (detail !== 'ok') throw new LedgerDamaged(`The file is damaged: ${detail}`);
};

class SqliteLedger implements Ledger {
  readonly #folder: string;
  readonly #writer: LedgerDatabase;
  readonly #reader: LedgerDatabase;
  readonly #release: () => Promise<void>;

  /** `release` closes the two connections and lets go of the folder. */
  constructor(
    folder: string,
    writer: SqliteConnection,
    reader: SqliteConnection,
    release: () => Promise<void>,
  ) {
    this.#folder = folder;
    this.#writer = new Kysely<LedgerTables>({ dialect: new SqliteDialect(writer, 'immediate') });
    this.#reader = new Kysely<LedgerTables>({ dialect: new SqliteDialect(reader, 'deferred') });
    this.#release = release;
  }

  read<Result>(query: (reader: LedgerReader) => Promise<Result>): Promise<Result> {
    return this.#orFault(() =>
      this.#reader.transaction().execute((transaction) => query(new SqliteReader(transaction))),
    );
  }

  append(
    occasion: Occasion,
    decide: (reader: LedgerReader) => Promise<Decision>,
    alongside?: (writer: SideWriter) => Promise<void>,
  ): Promise<readonly RecordedEvent[] | Refusal> {
    return this.#write(async (transaction) => {
      const decision = await decide(new SqliteReader(transaction));
      if (isRefusal(decision)) throw new Refused(decision);
      const recorder = await Recorder.in(transaction);
      const recorded = await recorder.record(occasion, decision);
      await recorder.finish();
      await alongside?.(new SqliteSideWriter(transaction));
      return recorded;
    });
  }

  appendAll(
    steps: AsyncIterable<{
      readonly occasion: Occasion;
      readonly decide: (reader: LedgerReader) => Promise<Decision>;
    }>,
  ): Promise<number | Refusal> {
    return this.#write(async (transaction) => {
      const reader = new SqliteReader(transaction);
      const recorder = await Recorder.in(transaction);
      let count = 0;
      for await (const { occasion, decide } of steps) {
        const decision = await decide(reader);
        if (isRefusal(decision)) throw new Refused(decision);
        count += (await recorder.record(occasion, decision)).length;
      }
      await recorder.finish();
      return count;
    });
  }

  writeAside(write: (writer: SideWriter) => Promise<void>): Promise<void> {
    return this.#orFault(() =>
      this.#writer.transaction().execute((transaction) => write(new SqliteSideWriter(transaction))),
    );
  }

  verify(options: VerifyOptions = {}): Promise<Verification> {
    return this.#orFault(() => verifyLedger(join(this.#folder, ledgerFileName), options));
  }

  rebuild(): Promise<number> {
    return this.#orFault(() =>
      this.#writer.transaction().execute(async (transaction) => {
        for (const table of projectionTables.toReversed()) await transaction.deleteFrom(table).execute();
        let last = 0;
        for await (const rows of pages(transaction)) {
          await project(
            transaction,
            rows.map(({ bytes }) => recordedFrom(bytes)),
          );
          last += rows.length;
        }
        return last;
      }),
    );
  }

  async *export(): AsyncIterable<string> {
    const { size } = await this.head();
    for await (const rows of pages(this.#reader, size)) {
      for (const { bytes } of rows) yield bytes.toString('utf8');
    }
  }

  head(): Promise<TreeHead> {
    return this.#orFault(async () => {
      const head = await this.#reader
        .selectFrom('tree_head')
        .select(['size', 'root_hash'])
        .executeTakeFirst();
      if (head === undefined) throw new LedgerDamaged('The tree head is missing.');
      return { size: head.size, rootHash: head.root_hash.toString('hex') };
    });
  }

  checkpoint(): Promise<string | Refusal> {
    return this.#write(async (transaction) => {
      const recorder = await Recorder.in(transaction);
      await recorder.signCheckpoint();
      const latest = await latestNote(transaction);
      if (latest === undefined) throw new Refused(refusal('checkpoint-none'));
      return latest;
    });
  }

  latestCheckpoint(): Promise<string | undefined> {
    return this.#orFault(() => latestNote(this.#reader));
  }

  checkpoints(limit: number): Promise<readonly KeptCheckpoint[]> {
    return this.#orFault(async () => {
      const rows = await this.#reader
        .selectFrom('checkpoint')
        .innerJoin('event', 'event.seq', 'checkpoint.size')
        .select(['size', 'note', 'bytes'])
        .orderBy('size', 'desc')
        .limit(limit)
        .execute();
      return rows.map(({ size, note, bytes }) => ({ size, note, at: recordedFrom(bytes).at }));
    });
  }

  async prove(seq: number, checkpoint?: string): Promise<string | Refusal> {
    if (checkpoint !== undefined) {
      const kept = readCheckpoint(checkpoint);
      if (kept === undefined) return refusal('checkpoint-malformed', {}, 'checkpoint');
      return this.#prove((prover) => prover.prove(seq, { ...kept, text: checkpoint }));
    }
    const proof = await this.#prove((prover) => prover.prove(seq));
    if (!isRefusal(proof) || proof.code !== 'checkpoint-does-not-cover') return proof;
    const signed = await this.checkpoint();
    return isRefusal(signed) ? signed : this.#prove((prover) => prover.prove(seq));
  }

  async proveGrowth(checkpoint: string): Promise<readonly string[] | Refusal> {
    const kept = readCheckpoint(checkpoint);
    if (kept === undefined) return refusal('checkpoint-malformed', {}, 'checkpoint');
    const path = await this.#prove((prover) => prover.proveGrowth(kept));
    return isRefusal(path) ? path : path.map((hash) => hash.toString('base64'));
  }

  copyTo(file: string): Promise<void> {
    return this.#orFault(async () => {
      const connection = await SqliteConnection.open(join(this.#folder, ledgerFileName));
      try {
        connection.waitForLocks(lockWaitMs);
        await connection.run('vacuum into ?', [file]);
      } finally {
        await connection.close();
      }
      const copy = await open(file, 'r+');
      try {
        await copy.sync();
      } finally {
        await copy.close();
      }
    });
  }

  async close(): Promise<void> {
    await this.#reader.destroy();
    await this.#writer.destroy();
    await this.#release();
  }

  /** A refusal ends the transaction as an error does, so that nothing of it stays. */
  async #write<Result>(work: (transaction: LedgerDatabase) => Promise<Result>): Promise<Result | Refusal> {
    try {
      return await this.#writer.transaction().execute(work);
    } catch (error) {
      if (error instanceof Refused) return error.refusal;
      return storageRefusal(error, this.#folder);
    }
  }

  #prove<Result>(work: (prover: Prover) => Promise<Result>): Promise<Result> {
    return this.#orFault(() =>
      this.#reader.transaction().execute((transaction) => work(new Prover(transaction))),
    );
  }

  #orFault<Result>(work: () => Promise<Result>): Promise<Result> {
    return orStorageFault(this.#folder, work);
  }
}

class Refused extends Error {
  override readonly name = 'Refused';
  readonly refusal: Refusal;

  constructor(refused: Refusal) {
    super(refused.code);
    this.refusal = refused;
  }
}

class SqliteSideWriter implements SideWriter {
  readonly #database: LedgerDatabase;

  constructor(database: LedgerDatabase) {
    this.#database = database;
  }

  async putCredential({ personId, salt, hash, failures, lockedUntil }: Credential): Promise<void> {
    const row = { salt, hash, failures, locked_until: lockedUntil };
    await this.#database
      .insertInto('credential')
      .values({ person_id: personId, ...row })
      .onConflict((conflict) => conflict.column('person_id').doUpdateSet(row))
      .execute();
  }

  async keepSecret(name: string, value: string): Promise<void> {
    await this.#database
      .insertInto('secret')
      .values({ name, value })
      .onConflict((conflict) => conflict.column('name').doNothing())
      .execute();
  }
}

const latestNote = async (database: LedgerDatabase): Promise<string | undefined> => {
  const row = await database
    .selectFrom('checkpoint')
    .select('note')
    .orderBy('size', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row?.note;
};

/** The events in order, a batch at a time, up to number `until`. */
async function* pages(database: LedgerDatabase, until = Number.MAX_SAFE_INTEGER) {
  for (let last = 0; last < until; ) {
    const rows = await database
      .selectFrom('event')
      .select(['seq', 'bytes'])
      .where('seq', '>', last)
      .where('seq', '<=', until)
      .orderBy('seq')
      .limit(batchSize)
      .execute();
    if (rows.length === 0) return;
    yield rows;
    last = rows.at(-1)?.seq ?? until;
  }
}
