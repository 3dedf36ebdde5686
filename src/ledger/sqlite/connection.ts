/** One SQLite connection as promises, with its statements kept prepared. */
import sqlite3, { type Database, type Statement } from 'sqlite3';

export type SqliteValue = string | number | null | Uint8Array;

const keptStatements = 100;

/** One statement at a time: whoever shares a connection waits for their turn (see the driver). */
export class SqliteConnection {
  readonly #database: Database;
  readonly #statements = new Map<string, Statement>();

  private constructor(database: Database) {
    this.#database = database;
  }

  /** Creates the file where it is missing. An empty name is a private database that spills to a temporary file. */
  static open(file: string): Promise<SqliteConnection> {
    return new Promise((resolve, reject) => {
      const database = new sqlite3.Database(file, sqlite3.OPEN_READWRITE | sqlite3.OPEN_CREATE, (error) =>
        error === null ? resolve(new SqliteConnection(database)) : reject(error),
      );
    });
  }

  /** Milliseconds to wait for a lock before `SQLITE_BUSY`. */
  waitForLocks(milliseconds: number): void {
    this.#database.configure('busyTimeout', milliseconds);
  }

  /** Any number of statements without parameters. */
  exec(sql: string): Promise<void> {
    return new Promise((resolve, reject) => {
      this.#database.exec(sql, (error) => (error === null ? resolve() : reject(error)));
    });
  }

  async all<Row>(sql: string, parameters: readonly SqliteValue[] = []): Promise<Row[]> {
    const statement = await this.#prepared(sql);
    return new Promise((resolve, reject) => {
      statement.all<Row>([...parameters], (error, rows) => (error === null ? resolve(rows) : reject(error)));
    });
  }

  /** The number of rows changed. */
  async run(sql: string, parameters: readonly SqliteValue[] = []): Promise<number> {
    const statement = await this.#prepared(sql);
    return new Promise((resolve, reject) => {
      statement.run([...parameters], function (error) {
        if (error === null) resolve(this.changes);
        else reject(error);
      });
    });
  }

  /** Ends what is running with `SQLITE_INTERRUPT`. */
  interrupt(): void {
    this.#database.interrupt();
  }

  async close(): Promise<void> {
    for (const [sql] of this.#statements) await this.#forget(sql);
    await new Promise<void>((resolve, reject) => {
      this.#database.close((error) => (error === null ? resolve() : reject(error)));
    });
  }

  async #prepared(sql: string): Promise<Statement> {
    const kept = this.#statements.get(sql);
    if (kept !== undefined) return kept;
    const statement = await new Promise<Statement>((resolve, reject) => {
      const prepared = this.#database.prepare(sql, (error) =>
        error === null ? resolve(prepared) : reject(error),
      );
    });
    const [oldest] = this.#statements.keys();
    if (this.#statements.size >= keptStatements && oldest !== undefined) await this.#forget(oldest);
    this.#statements.set(sql, statement);
    return statement;
  }

  #forget(sql: string): Promise<void> {
    const statement = this.#statements.get(sql);
    this.#statements.delete(sql);
    return new Promise((resolve) => {
      if (statement === undefined) resolve();
      else statement.finalize(() => resolve());
    });
  }
}
