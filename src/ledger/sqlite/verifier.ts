/** Proves a ledger file against itself: every event, the tree over them, and every projection made again from them. */
import { Kysely, sql } from 'kysely';
import type { LedgerFault, TreeHead, Verification, VerificationExtent, VerifyOptions } from '../ledger.ts';
import { TreeBuilder } from '../tree-builder.ts';
import { SqliteConnection, type SqliteValue } from './connection.ts';
import { SqliteDialect } from './dialect.ts';
import { EventCheck } from './event-check.ts';
import { type SchemaRow, schemaDifferences } from './expected-schema.ts';
import { project } from './projector.ts';
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
 * Reads one state of the file on a connection of its own, while others go on writing. Where everything is verified, the
 * projections are made again in a private temporary database and compared row by row, so memory stays flat however long the
 * ledger is. The form of the file is checked at the same time on a second connection, which may see a later state of it.
 */
export const verifyLedger = async (file: string, options: VerifyOptions): Promise<Verification> => {
  const rebuilt = await SqliteConnection.open('');
  const form = await SqliteConnection.open('');
  try {
    if (extentOf(options) === 'everything') await migrate(rebuilt);
    await rebuilt.exec('pragma journal_mode = off; pragma synchronous = off; pragma cache_size = -16000');
    const database = new Kysely<LedgerTables>({ dialect: new SqliteDialect(rebuilt, 'deferred') });
    return await new Verifier(database, form, options).verify(async () => {
      for (const connection of [rebuilt, form]) {
        await connection.run('attach ? as recorded', [file]);
        await connection.run('begin');
      }
    });
  } finally {
    form.interrupt();
    await form.close();
    await rebuilt.close();
  }
};

const extentOf = ({ extent = 'everything' }: VerifyOptions): VerificationExtent => extent;

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
  readonly #form: SqliteConnection;
  readonly #faults: LedgerFault[] = [];
  readonly #options: VerifyOptions;
  #events: EventCheck | undefined;

  constructor(database: LedgerDatabase, form: SqliteConnection, options: VerifyOptions) {
    this.#options = options;
    this.#form = form;
    this.#rebuilt = database;
    this.#recorded = database.withSchema('recorded');
  }

  /** `begin` attaches the file and begins the transaction, which nobody ends: what was made again goes with the connection. */
  async verify(begin: () => Promise<void>): Promise<Verification> {
    await this.#stage(begin);
    if (this.#faults.length > 0) return this.#verification();
    await this.#stage(() => this.#checkSchema());
    const formFaults = this.#extent === 'events' ? [] : this.#formFaults();
    if (formFaults instanceof Promise) formFaults.catch(() => undefined);
    await this.#stage(() => this.#checkEvents());
    await this.#stage(async () => {
      for (const detail of await formFaults) this.#damaged(detail);
    });
    await this.#stage(() => this.#checkHead());
    if (this.#extent === 'everything')
      for (const table of projectionTables) await this.#stage(() => this.#compare(table));
    return this.#verification();
  }

  get #extent(): VerificationExtent {
    return extentOf(this.#options);
  }

  get #tree(): TreeBuilder {
    return this.#events?.tree ?? new TreeBuilder();
  }

  #verification(): Verification {
    return {
      sound: this.#faults.length === 0,
      head: headOf(this.#tree),
      checkpoints: this.#events?.checkpointsSeen ?? 0,
      faults: this.#faults,
    };
  }

  #found(fault: LedgerFault): void {
    if (this.#faults.length < namedFaults) this.#faults.push(fault);
  }

  #damaged(detail: string): void {
    this.#found({ kind: 'database damaged', detail });
  }

  /** What cannot be read at all is a fault too, and the other stages still run. */
  async #stage(work: () => Promise<void>): Promise<void> {
    this.#options.signal?.throwIfAborted();
    try {
      await work();
    } catch (error) {
      this.#options.signal?.throwIfAborted();
      this.#found(damage(error));
    }
  }

  /** Tables, indexes and above all the triggers are those that this program made, and no others. */
  async #checkSchema(): Promise<void> {
    const { rows } = await sql<SchemaRow>`
      select type, name, tbl_name, sql from recorded.sqlite_schema`.execute(this.#rebuilt);
    for (const difference of await schemaDifferences(rows)) this.#damaged(difference);
  }

  /** What SQLite itself finds wrong with the file, a line each. */
  async #formFaults(): Promise<readonly string[]> {
    const check = this.#extent === 'everything' ? 'integrity_check' : 'quick_check';
    const rows = await this.#form.all<Readonly<Record<string, string>>>(`pragma recorded.${check}`);
    return rows.flatMap((row) => Object.values(row)).filter((detail) => detail !== 'ok');
  }

  async #checkEvents(): Promise<void> {
    const { signal, onProgress } = this.#options;
    const stored = await this.#storedHead();
    this.#events = new EventCheck(this.#recorded, {
      found: (fault) => this.#found(fault),
      kept: this.#options.kept,
      signal,
      onChecked: (done) => onProgress?.({ done, of: Math.max(done, stored?.size ?? 0) }),
      ...(this.#extent === 'everything'
        ? { onEvents: (events) => this.#stage(() => project(this.#rebuilt, events)) }
        : {}),
    });
    await this.#events.run();
  }

  #storedHead() {
    return this.#recorded
      .selectFrom('tree_head')
      .select(['size', 'root_hash', 'frontier'])
      .executeTakeFirst();
  }

  async #checkHead(): Promise<void> {
    const stored = await this.#storedHead();
    if (stored === undefined) return this.#damaged('the tree head is missing');
    this.#events?.nameMissing(stored.size + 1);
    const head: TreeHead = { size: stored.size, rootHash: Buffer.from(stored.root_hash).toString('hex') };
    const computed = headOf(this.#tree);
    if (head.size !== computed.size || head.rootHash !== computed.rootHash) {
      this.#found({ kind: 'tree head does not match', stored: head, computed });
    } else if (!this.#tree.frontierBytes().equals(Buffer.from(stored.frontier))) {
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

const headOf = (tree: TreeBuilder): TreeHead => ({ size: tree.size, rootHash: tree.rootHash() });
