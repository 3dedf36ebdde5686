/** Holds the stored subtrees of a ledger file against those that its events make. */
import { sql } from 'kysely';
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

export interface StoredSubtrees {
  /** Of each: the event that it ends with, how many bytes its hashes have, and of what type they are. */
  readonly shapes: string | null;
  /** The hashes of all, one after the other. */
  readonly hashes: Buffer | null;
}

/** True where just these are stored: hashes by the event that they end with, as the tree builder gives them. */
export const areStored = (grown: ReadonlyMap<number, string>, { shapes, hashes }: StoredSubtrees): boolean =>
  [...grown].map(([seq, { length }]) => `${seq} ${length} blob`).join(',') === (shapes ?? '') &&
  [...grown.values()].join('') === (hashes ?? nothing).toString('latin1');

type SubtreeFault = Extract<LedgerFault, { kind: 'subtree differs' }>;

/** A damaged file with more is no less damaged. */
const mostStrays = 1000;

export class SubtreeCheck {
  readonly #recorded: LedgerDatabase;

  /** `recorded` is the file under test, attached under this name. */
  constructor(recorded: LedgerDatabase) {
    this.#recorded = recorded;
  }

  /** Those that end with the events after number `after`, up to `last`. */
  async read(after: number, last: number): Promise<StoredSubtrees> {
    const { rows } = await sql<StoredSubtrees>`
      select group_concat(last_seq || ' ' || length(hashes) || ' ' || typeof(hashes)) as "shapes",
        cast(group_concat(cast(hashes as text), '') as blob) as "hashes"
      from (select * from recorded.subtree where last_seq > ${after} and last_seq <= ${last} order by last_seq)
    `.execute(this.#recorded);
    return rows[0] ?? { shapes: null, hashes: null };
  }

  /**
   * `grown` is the hashes of 2, 4, 8, … events that end with each event after number `after`, up to `last`, one after the
   * other in a binary string. Of subtrees one within the other the smallest is named, and none that ends in what is known to be
   * false: `lastFalse` is the last event of which that is known.
   */
  async faults(
    after: number,
    last: number,
    grown: ReadonlyMap<number, string>,
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
    for (const [seq, hashes] of grown) {
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
