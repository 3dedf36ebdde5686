/** The Kysely driver over one SQLite connection: whoever asks for it waits in line until it is free. */
import {
  type CompiledQuery,
  type DatabaseConnection,
  DeleteQueryNode,
  type Driver,
  InsertQueryNode,
  type QueryResult,
  UpdateQueryNode,
} from 'kysely';
import type { SqliteConnection, SqliteValue } from './connection.ts';

/** `immediate` takes the write lock at the start of a transaction; `deferred` reads one state, from its first read on. */
export type TransactionMode = 'deferred' | 'immediate';

export class SqliteDriver implements Driver {
  readonly #connection: SqliteConnection;
  readonly #mode: TransactionMode;
  readonly #waiting: (() => void)[] = [];
  #inUse = false;

  constructor(connection: SqliteConnection, mode: TransactionMode) {
    this.#connection = connection;
    this.#mode = mode;
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<DatabaseConnection> {
    if (this.#inUse) await new Promise<void>((resolve) => this.#waiting.push(resolve));
    this.#inUse = true;
    return new KyselyConnection(this.#connection);
  }

  async releaseConnection(): Promise<void> {
    const next = this.#waiting.shift();
    if (next === undefined) this.#inUse = false;
    else next();
  }

  async beginTransaction(): Promise<void> {
    await this.#connection.run(`begin ${this.#mode}`);
  }

  async commitTransaction(): Promise<void> {
    await this.#connection.run('commit');
  }

  /** SQLite has ended the transaction by itself after some errors, a full disk among them. */
  async rollbackTransaction(): Promise<void> {
    try {
      await this.#connection.run('rollback');
    } catch (error) {
      if (!(error instanceof Error && error.message.includes('no transaction is active'))) throw error;
    }
  }

  /** Resolves when everyone already in line has been served. The connection belongs to whoever opened it, who closes it. */
  async destroy(): Promise<void> {
    await this.acquireConnection();
  }
}

class KyselyConnection implements DatabaseConnection {
  readonly #connection: SqliteConnection;

  constructor(connection: SqliteConnection) {
    this.#connection = connection;
  }

  async executeQuery<Row>({ sql, parameters, query }: CompiledQuery): Promise<QueryResult<Row>> {
    const values = parameters as readonly SqliteValue[];
    const changes = InsertQueryNode.is(query) || UpdateQueryNode.is(query) || DeleteQueryNode.is(query);
    return changes && query.returning === undefined
      ? { rows: [], numAffectedRows: BigInt(await this.#connection.run(sql, values)) }
      : { rows: await this.#connection.all<Row>(sql, values) };
  }

  streamQuery<Row>(): AsyncIterableIterator<QueryResult<Row>> {
    throw new Error('Long results are read page by page, along the primary key.');
  }
}
