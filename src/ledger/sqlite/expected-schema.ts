/** Holds the schema of a ledger file against the one that this program makes of an empty file. */
import { SqliteConnection } from './connection.ts';
import { migrate } from './schema.ts';

/** A row of `sqlite_schema`, as a damaged file may deliver it. */
export interface SchemaRow {
  readonly type: unknown;
  readonly name: unknown;
  readonly tbl_name: unknown;
  readonly sql: unknown;
}

/** A row by everything that is said in it, with its name. */
const byContent = (rows: readonly SchemaRow[]): ReadonlyMap<string, string> =>
  new Map(
    rows.map(({ type, name, tbl_name, sql }) => [JSON.stringify([type, name, tbl_name, sql]), String(name)]),
  );

const makeSchema = async (): Promise<ReadonlyMap<string, string>> => {
  const empty = await SqliteConnection.open('');
  try {
    await migrate(empty);
    return byContent(await empty.all<SchemaRow>('select type, name, tbl_name, sql from sqlite_schema'));
  } finally {
    await empty.close();
  }
};

/** The same every time, so it is made once. */
let made: ReadonlyMap<string, string> | undefined;

/** A sentence for each thing that is not there as this program makes it, and for each that it does not make. */
export const schemaDifferences = async (rows: readonly SchemaRow[]): Promise<readonly string[]> => {
  made ??= await makeSchema();
  const expected = made;
  const recorded = byContent(rows);
  const strange = [...recorded].filter(([content]) => !expected.has(content));
  const missing = [...expected].filter(([content]) => !recorded.has(content));
  return [
    ...strange.map(([, name]) => `schema: ${name} does not belong here`),
    ...missing.map(([, name]) => `schema: ${name} is missing or altered`),
  ];
};
