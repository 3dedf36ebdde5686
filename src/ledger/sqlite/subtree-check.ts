/** Holds the stored subtrees of a ledger file against those that its events make. */
import { type RawBuilder, sql } from 'kysely';
import type { LedgerFault } from '../ledger.ts';
import { hashLength } from '../merkle.ts';
import type { LedgerDatabase } from './schema.ts';

const nothing = Buffer.alloc(0);

/** As a damaged file may deliver it: what is no bytes has no hashes. */
const binaryOf = (hashes: unknown): string => (Buffer.isBuffer(hashes) ? hashes.toString('latin1') : '');

/** Which of the hashes, counted from 0, is another one in `stored`; the first where `stored` only goes on after the last. */
const firstDifference = (hashes: string, stored: string): number | undefined => {
  if (hashes === stored) return undefined;
  for (let start = 0; start < hashes.length; start += hashLength) {
    if (hashes.slice(start, start + hashLength) !== stored.slice(start, start + hashLength))
      return start / hashLength;
  }
  return 0;
};

/** The hashes of the subtrees of 2, 4, 8, … events that end with an event, one after the other in a binary string. */
export interface GrownSubtrees {
  readonly seq: number;
  readonly hashes: string;
}

export interface StoredSubtrees {
  /** With how many events subtrees end, and which of these are the first and the last. */
  readonly ends: number;
  readonly firstEnd: number | null;
  readonly lastEnd: number | null;
  /** How many of these are odd, or do not have one hash for each time that their number can be halved. */
  readonly misshapen: number;
  /** The type of the least of all hashes: blobs come after all other types in the order of SQLite. */
  readonly leastSubtree: string;
  /** The hashes of all, one after the other. */
  readonly subtrees: Buffer | null;
}

/** What is stored of the subtrees that end with the events after number `after`, up to `last`, as one row. */
export const storedSubtrees = (after: number, last: RawBuilder<number>) => sql<StoredSubtrees>`
  select count(hashes) as "ends", min(last_seq) as "firstEnd", max(last_seq) as "lastEnd",
    total(last_seq & 1 or length(hashes) % ${hashLength}
      or 1 << (length(hashes) / ${hashLength}) <> last_seq & -last_seq) as "misshapen",
    typeof(min(hashes)) as "leastSubtree", cast(group_concat(hashes, '') as blob) as "subtrees"
  from (select * from recorded.subtree where last_seq > ${after} and last_seq <= ${last} order by last_seq)
`;

/** True where just these are stored; those grown are of events without a gap. */
export const areStored = (
  grown: readonly GrownSubtrees[],
  { ends, firstEnd, lastEnd, misshapen, leastSubtree, subtrees }: StoredSubtrees,
): boolean =>
  ends === grown.length &&
  firstEnd === (grown[0]?.seq ?? null) &&
  lastEnd === (grown.at(-1)?.seq ?? null) &&
  misshapen === 0 &&
  leastSubtree === (ends === 0 ? 'null' : 'blob') &&
  grown.map((each) => each.hashes).join('') === (subtrees ?? nothing).toString('latin1');

type SubtreeFault = Extract<LedgerFault, { kind: 'subtree differs' }>;

/** A damaged file with more is no less damaged. */
const mostStrays = 1000;

export class SubtreeCheck {
  readonly #recorded: LedgerDatabase;

  /** `recorded` is the file under test, attached under this name. */
  constructor(recorded: LedgerDatabase) {
    this.#recorded = recorded;
  }

  /**
   * `grown` is all that end with the events after number `after`, up to `last`. Of subtrees one within the other the smallest
   * is named, and none that ends in what is known to be false: `lastFalse` is the last event of which that is known.
   */
  async faults(
    after: number,
    last: number,
    grown: readonly GrownSubtrees[],
    lastFalse: number,
  ): Promise<readonly SubtreeFault[]> {
    const rows = await this.#recorded
      .selectFrom('subtree')
      .selectAll()
      .where('last_seq', '>', after)
      .where('last_seq', '<=', last)
      .execute();
    const stored = new Map(rows.map(({ last_seq: seq, hashes }) => [seq, binaryOf(hashes)]));
    const faults: SubtreeFault[] = [];
    let latest = lastFalse;
    for (const { seq, hashes } of grown) {
      const level = firstDifference(hashes, stored.get(seq) ?? '');
      if (level === undefined) continue;
      const events = 2 ** (level + 1);
      if (latest > seq - events) continue;
      faults.push({ kind: 'subtree differs', lastSeq: seq, events });
      latest = seq;
    }
    return faults;
  }

  /** Those that end with no event, or with one that ends none. */
  async strays(last: number): Promise<readonly SubtreeFault[]> {
    const rows = await this.#recorded
      .selectFrom('subtree')
      .select('last_seq')
      .where(({ or, eb }) =>
        or([eb('last_seq', '<', 2), eb('last_seq', '>', last), eb(sql<number>`last_seq % 2`, '<>', 0)]),
      )
      .limit(mostStrays)
      .execute();
    return rows.map(({ last_seq: lastSeq }) => ({ kind: 'subtree differs', lastSeq, events: 2 }));
  }
}
