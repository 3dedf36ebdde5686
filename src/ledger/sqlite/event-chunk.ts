/** A thousand events of a ledger file as one row: so they are fetched and hashed far faster than one by one. */
import { sql } from 'kysely';
import { hashLength } from '../merkle.ts';
import { leafHashOf } from '../tree-builder.ts';
import type { LedgerDatabase } from './schema.ts';

/** Events in one row. */
export const chunkSize = 1000;

export interface EventChunk {
  readonly count: number;
  readonly first: number | null;
  readonly last: number | null;
  /** How many have their bytes and their hash as bytes. */
  readonly blobs: number;
  /** 0x00 and the bytes of each, one after the other. */
  readonly leaves: Buffer | null;
  /** How many bytes each has, with commas between. */
  readonly lengths: string | null;
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
      total(typeof(bytes) = 'blob' and typeof(leaf_hash) = 'blob') as "blobs",
      cast(group_concat(char(0) || cast(bytes as text), '') as blob) as "leaves",
      group_concat(length(bytes)) as "lengths",
      cast(group_concat(cast(leaf_hash as text), '') as blob) as "hashes",
      ${columns} as "columns"
    from (select * from recorded.event where seq > ${after} order by seq limit ${chunkSize})
  `.execute(recorded);
  const [chunk] = rows;
  if (chunk === undefined) throw new Error('An aggregate has one row.');
  return chunk;
};

export interface ChunkLeaf {
  /** Binary, as the tree builder has it. */
  readonly hash: string;
  /** 0x00 and the bytes of the event. */
  readonly leaf: Buffer;
}

/** The leaves of a chunk where every one has the hash that is stored; else `undefined`. */
export const soundLeaves = ({
  count,
  blobs,
  leaves,
  lengths,
  hashes,
}: EventChunk): readonly ChunkLeaf[] | undefined => {
  if (blobs !== count || leaves === null || lengths === null || hashes?.length !== count * hashLength)
    return undefined;
  const found: ChunkLeaf[] = [];
  let start = 0;
  for (const length of lengths.split(',')) {
    const end = start + 1 + Number(length);
    const leaf = leaves.subarray(start, end);
    const hash = leafHashOf(leaf);
    found.push({ hash, leaf });
    start = end;
  }
  const isStored = found.map(({ hash }) => hash).join('') === hashes.toString('latin1');
  return start === leaves.length && found.length === count && isStored ? found : undefined;
};
