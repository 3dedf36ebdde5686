/** A thousand events of a ledger file, with all that they are held against, as one row: far faster than one by one. */
import { sql } from 'kysely';
import { hashLength, leafHash } from '../merkle.ts';
import { leafHashOf } from '../tree-builder.ts';
import type { CheckpointRow } from './checkpoint-check.ts';
import type { LedgerDatabase } from './schema.ts';
import { type StoredSubtrees, storedSubtrees } from './subtree-check.ts';

/** Events in one row. */
export const chunkSize = 1000;

/** Stands before and between the events of a chunk, as it does before a leaf that is hashed; canonical JSON has none. */
const leafPrefix = 0x00;

export interface EventChunk extends StoredSubtrees {
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
  /** The checkpoints that end with one of the events, a line each: size, type of the note, its bytes in hex. */
  readonly checkpoints: string | null;
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
  const last = sql<number>`(select "last" from together)`;
  const { rows } = await sql<EventChunk>`
    with together as materialized (select count(*) as "count", min(seq) as "first", max(seq) as "last",
      typeof(min(bytes)) || ' ' || typeof(min(leaf_hash)) as "least",
      cast(group_concat(bytes, char(0)) as blob) as "events",
      cast(group_concat(leaf_hash, '') as blob) as "hashes",
      ${columns} as "columns"
    from (select * from recorded.event where seq > ${after} order by seq limit ${chunkSize})),
    covering as (select group_concat(size || ' ' || typeof(note) || ' ' || hex(note), char(10)) as "checkpoints"
      from recorded.checkpoint where size > ${after} and size <= ${last})
    select * from together, covering, (${storedSubtrees(after, last)})
  `.execute(recorded);
  const [chunk] = rows;
  if (chunk === undefined) throw new Error('An aggregate has one row.');
  return chunk;
};

export interface ChunkLeaves {
  /** The hashes of the events as they are now, as the tree builder has them. */
  readonly hashes: readonly string[];
  /** Which of them, counted from 0, are not the hashes that are stored. */
  readonly changed: ReadonlySet<number>;
}

/** `undefined` where an event or a hash is not there as bytes, or where one event cannot be told from the next. */
export const leavesOf = ({ count, least, events, hashes: stored }: EventChunk): ChunkLeaves | undefined => {
  if (least !== 'blob blob' || events === null || stored?.length !== count * hashLength) return undefined;
  let start = events.indexOf(leafPrefix);
  const hashes = [leafHash(events.subarray(0, start < 0 ? events.length : start)).toString('latin1')];
  while (start >= 0 && hashes.length < count) {
    const end = events.indexOf(leafPrefix, start + 1);
    hashes.push(leafHashOf(events.subarray(start, end < 0 ? events.length : end)));
    start = end;
  }
  if (start >= 0 || hashes.length < count) return undefined;
  return { hashes, changed: differences(hashes, stored.toString('latin1')) };
};

const differences = (hashes: readonly string[], stored: string): ReadonlySet<number> => {
  const found = new Set<number>();
  if (hashes.join('') === stored) return found;
  for (const [index, hash] of hashes.entries())
    if (!stored.startsWith(hash, index * hashLength)) found.add(index);
  return found;
};

/** The events of a chunk that has leaves, as text. */
export const textsOf = ({ events }: EventChunk): readonly string[] =>
  events?.toString('utf8').split('\0') ?? [];

export const checkpointsOf = ({ checkpoints }: EventChunk): readonly CheckpointRow[] =>
  checkpoints === null
    ? []
    : checkpoints.split('\n').map((line) => {
        const [size, type, hex = ''] = line.split(' ');
        return {
          size: Number(size),
          note: type === 'text' ? Buffer.from(hex, 'hex').toString('utf8') : null,
        };
      });
