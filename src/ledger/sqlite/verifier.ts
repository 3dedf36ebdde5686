/** Proves a ledger file against itself: every event, the tree over them, and every projection made again from them. */
import { Kysely, sql } from 'kysely';
import { type RecordedEvent, recordedEventSchema } from '../../domain/event.ts';
import { canonicalJson } from '../canonical-json.ts';
import type { LedgerFault, TreeHead, Verification } from '../ledger.ts';
import { emptyFrontier, type Frontier, frontierBytes, leafHash, rootHash, withLeaf } from '../merkle.ts';
import { SqliteConnection, type SqliteValue } from './connection.ts';
import { SqliteDialect } from './dialect.ts';
import { lookUpColumns, recordedFrom } from './event-row.ts';
import { batchSize, project } from './projector.ts';
import {
  type LedgerDatabase,
  type LedgerTables,
  migrate,
  type ProjectionTable,
  projectionKeys,
  projectionTables,
} from './schema.ts';

/** Faults that are named; a ledger with more is no less unsound. */
const namedFaults = 1000;

/**
 * Reads one state of the file on a connection of its own, while others go on writing. The projections are made again in a
 * private temporary database and compared row by row, so memory stays flat however long the ledger is.
 */
export const verifyLedger = async (file: string): Promise<Verification> => {
  const connection = await SqliteConnection.open('');
  try {
    await migrate(connection);
    await connection.exec('pragma journal_mode = off; pragma synchronous = off; pragma cache_size = -16000');
    const database = new Kysely<LedgerTables>({ dialect: new SqliteDialect(connection, 'deferred') });
    return await new Verifier(database).verify(async () => {
      await connection.run('attach ? as recorded', [file]);
      await connection.run('begin');
    });
  } finally {
    await connection.close();
  }
};

/** The fault that an error of reading shows; an error that says nothing about the file, such as a full disk, is thrown again. */
const damage = (error: unknown): LedgerFault => {
  if (!(error instanceof Error)) throw error;
  if ('code' in error && /^SQLITE_(FULL|BUSY|LOCKED|NOMEM|CANTOPEN)/.test(String(error.code))) throw error;
  return { kind: 'database damaged', detail: error.message };
};

/** The file under test is attached as `recorded`; the unqualified tables are those that are made again. */
class Verifier {
  readonly #rebuilt: LedgerDatabase;
  readonly #recorded: LedgerDatabase;
  readonly #faults: LedgerFault[] = [];
  #frontier: Frontier = emptyFrontier;
  #next = 1;

  constructor(database: LedgerDatabase) {
    this.#rebuilt = database;
    this.#recorded = database.withSchema('recorded');
  }

  /** `begin` attaches the file and begins the transaction, which nobody ends: what was made again goes with the connection. */
  async verify(begin: () => Promise<void>): Promise<Verification> {
    await this.#stage(begin);
    if (this.#faults.length > 0) return this.#verification();
    await this.#stage(() => this.#checkSchema());
    await this.#stage(() => this.#checkFile());
    await this.#stage(() => this.#checkEvents());
    await this.#stage(() => this.#checkHead());
    for (const table of projectionTables) await this.#stage(() => this.#compare(table));
    return this.#verification();
  }

  #verification(): Verification {
    return { sound: this.#faults.length === 0, head: headOf(this.#frontier), faults: this.#faults };
  }

  #found(fault: LedgerFault): void {
    if (this.#faults.length < namedFaults) this.#faults.push(fault);
  }

  #damaged(detail: string): void {
    this.#found({ kind: 'database damaged', detail });
  }

  /** What cannot be read at all is a fault too, and the other stages still run. */
  async #stage(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      this.#found(damage(error));
    }
  }

  /** Tables, indexes and above all the triggers are those that this program made, and no others. */
  async #checkSchema(): Promise<void> {
    const { rows } = await sql<{ name: string; of: 'recorded' | 'expected' }>`
      select name, 'recorded' as "of" from (
        select type, name, tbl_name, sql from recorded.sqlite_schema
        except select type, name, tbl_name, sql from main.sqlite_schema)
      union all
      select name, 'expected' as "of" from (
        select type, name, tbl_name, sql from main.sqlite_schema
        except select type, name, tbl_name, sql from recorded.sqlite_schema)
    `.execute(this.#rebuilt);
    for (const { name, of } of rows) {
      this.#damaged(
        of === 'expected' ? `schema: ${name} is missing or altered` : `schema: ${name} does not belong here`,
      );
    }
  }

  async #checkFile(): Promise<void> {
    const { rows } = await sql<{ integrity_check: string }>`pragma recorded.integrity_check`.execute(
      this.#rebuilt,
    );
    for (const { integrity_check: detail } of rows) if (detail !== 'ok') this.#damaged(detail);
  }

  async #checkEvents(): Promise<void> {
    let last = Number.MIN_SAFE_INTEGER;
    for (;;) {
      const rows: readonly EventRow[] = await this.#recorded
        .selectFrom('event')
        .selectAll()
        .where('seq', '>', last)
        .orderBy('seq')
        .limit(batchSize)
        .execute();
      const sound = rows.map((row) => this.#checkEvent(row)).filter((recorded) => recorded !== undefined);
      await this.#stage(() => project(this.#rebuilt, sound));
      last = rows.at(-1)?.seq ?? last;
      if (rows.length < batchSize || !Number.isSafeInteger(last)) break;
    }
  }

  /** The event where it can be projected. */
  #checkEvent(row: EventRow): RecordedEvent | undefined {
    this.#missing(row.seq);
    this.#next = row.seq + 1;
    const bytes = Buffer.from(row.bytes ?? '');
    const leaf = leafHash(bytes);
    this.#frontier = withLeaf(this.#frontier, leaf);
    const recorded = parsed(bytes);
    if (recorded === undefined || !isTrue(row, leaf, bytes, recorded)) {
      this.#found({ kind: 'event changed', seq: row.seq });
    }
    return recorded;
  }

  /** Every number from the one that is due to the one before `seq` is missing. */
  #missing(seq: number): void {
    for (; this.#next < seq && this.#faults.length < namedFaults; this.#next += 1) {
      this.#found({ kind: 'event missing', seq: this.#next });
    }
  }

  async #checkHead(): Promise<void> {
    const stored = await this.#recorded
      .selectFrom('tree_head')
      .select(['size', 'root_hash', 'frontier'])
      .executeTakeFirst();
    if (stored === undefined) return this.#damaged('the tree head is missing');
    this.#missing(stored.size + 1);
    const head: TreeHead = { size: stored.size, rootHash: Buffer.from(stored.root_hash).toString('hex') };
    const computed = headOf(this.#frontier);
    if (head.size !== computed.size || head.rootHash !== computed.rootHash) {
      this.#found({ kind: 'tree head does not match', stored: head, computed });
    } else if (!frontierBytes(this.#frontier).equals(Buffer.from(stored.frontier))) {
      this.#damaged('the tree head does not have the subtrees of its events');
    }
  }

  /** Rows that are recorded and not made again as they are, and rows that are made again and not recorded. */
  async #compare(table: ProjectionTable): Promise<void> {
    const { rows: columns } = await sql<{ name: string }>`
      select name from pragma_table_info(${table}, 'main')`.execute(this.#rebuilt);
    const left = sql.ref(`recorded_row.${projectionKeys[table]}`);
    const right = sql.ref(`rebuilt_row.${projectionKeys[table]}`);
    const same = sql.join(
      columns.map(({ name }) => sql`${sql.ref(`recorded_row.${name}`)} is ${sql.ref(`rebuilt_row.${name}`)}`),
      sql` and `,
    );
    const { rows } = await sql<{ key: SqliteValue }>`
      select ${left} as "key" from ${sql.table(`recorded.${table}`)} as recorded_row
        left join ${sql.table(`main.${table}`)} as rebuilt_row on ${left} = ${right}
        where not (${same})
      union all
      select ${right} as "key" from ${sql.table(`main.${table}`)} as rebuilt_row
        left join ${sql.table(`recorded.${table}`)} as recorded_row on ${left} = ${right}
        where ${left} is null
      limit ${namedFaults}
    `.execute(this.#rebuilt);
    for (const { key } of rows) this.#found({ kind: 'projection differs', table, key: String(key) });
  }
}

/** As a damaged file may deliver it. */
interface EventRow {
  readonly seq: number;
  readonly bytes: Buffer | string | null;
  readonly leaf_hash: Buffer | string | null;
  readonly bench_id: string | null;
  readonly inspection: number | null;
}

/** As it stands in the bytes, whatever the schema would add or leave out. */
const parsed = (bytes: Buffer): RecordedEvent | undefined => {
  try {
    const recorded = recordedFrom(bytes);
    return recordedEventSchema.safeParse(recorded).success ? recorded : undefined;
  } catch {
    return undefined;
  }
};

/** True where the row is what the recorder would have written for this event: bytes, leaf hash, number and columns. */
const isTrue = (row: EventRow, leaf: Buffer, bytes: Buffer, recorded: RecordedEvent): boolean => {
  const { bench_id, inspection } = lookUpColumns(recorded);
  return (
    Buffer.isBuffer(row.bytes) &&
    Buffer.isBuffer(row.leaf_hash) &&
    row.leaf_hash.equals(leaf) &&
    Buffer.from(canonicalJson(recorded), 'utf8').equals(bytes) &&
    recorded.seq === row.seq &&
    row.bench_id === bench_id &&
    row.inspection === inspection
  );
};

const headOf = (frontier: Frontier): TreeHead => ({
  size: frontier.size,
  rootHash: rootHash(frontier).toString('hex'),
});
