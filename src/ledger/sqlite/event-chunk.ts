/** A thousand events of a ledger file as one row: so they are fetched and hashed far faster than one by one. */
import { sql } from 'kysely';
import { hashLength, leafHash } from '../merkle.ts';
import { leafHashOf } from '../tree-builder.ts';
import type { LedgerDatabase } from './schema.ts';

/** Events in one row. */
export const chunkSize = 1000;

/** Stands before and between the events of a chunk, as it does before a leaf that is hashed; canonical JSON has none. */
const leafPrefix = 0x00;

export interface EventChunk {
  readonly count: number;
  readonly first: number | null;
  readonly last: number | null;
  /** The type of the least of all bytes, and of all hashes: blobs come after all other types in the order of SQLite. */
  readonly least: string;
  /** The bytes of the events, 0x00 between them. */
  readonly events: Buffer | null;
  /** The stored hashes, one after the other. */
  readonly hashes: Buffer | null;
  /** The columns beside each, as SQL writes them, a line each; only where they were asked for. */
  readonly columns: string | null;
}

/** The events that follow number `after`. `recorded` is the file, attached under this name. */
export const readChunk = async (
  recorded: LedgerDatabase,
  after: number,
  withColumns: boolean,
): Promise<EventChunk> => {
  const columns = withColumns
    ? sql`group_concat(quote(bench_id) || ' ' || quote(inspection), char(10))`
    : sql`null`;
  const { rows } = await sql<EventChunk>`
    select count(*) as "count", min(seq) as "first", max(seq) as "last",
      typeof(min(bytes)) || ' ' || typeof(min(leaf_hash)) as "least",
      cast(group_concat(bytes, char(0)) as blob) as "events",
      cast(group_concat(leaf_hash, '') as blob) as "hashes",
      ${columns} as "columns"
    from (select * from recorded.event where seq > ${after} order by seq limit ${chunkSize})
  `.execute(recorded);
  const [chunk] = rows;
  if (chunk === undefined) throw new Error('An aggregate has one row.');
  return chunk;
};

/** The hashes of the events, as the tree builder has them, where every one is the hash that is stored; else `undefined`. */
export const soundHashes = ({ count, least, events, hashes }: EventChunk): readonly string[] | undefined => {
  if (least !== 'blob blob' || events === null || hashes?.length !== count * hashLength) return undefined;
  let start = events.indexOf(leafPrefix);
  const found = [leafHash(events.subarray(0, start < 0 ? events.length : start)).toString('latin1')];
  while (start >= 0 && found.length < count) {
    const end = events.indexOf(leafPrefix, start + 1);
    found.push(leafHashOf(events.subarray(start, end < 0 ? events.length : end)));
    start = end;
  }
  const isStored = found.join('') === hashes.toString('latin1');
  return start < 0 && found.length === count && isStored ? found : undefined;
};

/** The events of a chunk whose hashes are sound, as text. */
export const textsOf = ({ events }: EventChunk): readonly string[] =>
  events?.toString('utf8').split('\0') ?? [];
