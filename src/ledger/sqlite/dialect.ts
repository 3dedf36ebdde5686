/** The Kysely dialect for SQLite through the `sqlite3` package. */
import {
  type DatabaseIntrospector,
  type Dialect,
  type DialectAdapter,
  type Driver,
  type Kysely,
  type QueryCompiler,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';
import type { SqliteConnection } from './connection.ts';
import { SqliteDriver, type TransactionMode } from './driver.ts';

export class SqliteDialect implements Dialect {
  readonly #connection: SqliteConnection;
  readonly #mode: TransactionMode;

  constructor(connection: SqliteConnection, mode: TransactionMode) {
    this.#connection = connection;
    this.#mode = mode;
  }

  createAdapter(): DialectAdapter {
    return new SqliteAdapter();
  }

  createDriver(): Driver {
    return new SqliteDriver(this.#connection, this.#mode);
  }

  createIntrospector(database: Kysely<unknown>): DatabaseIntrospector {
    return new SqliteIntrospector(database);
  }

  createQueryCompiler(): QueryCompiler {
    return new SqliteQueryCompiler();
  }
}
