/** Holds the stored subtrees of a ledger file against those that its events make. */
import { sql } from 'kysely';
import type { LedgerFault } from '../ledger.ts';
import { hashLength } from '../merkle.ts';
import type { LedgerDatabase } from './schema.ts';

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
   * `grown` is the hashes (hex) of 2, 4, 8, … events that end with each event after number `before`, up to `last`. Of subtrees
   * one within the other the smallest is named, and none that ends in what is known to be false: `lastFalse` is the last
   * event of which that is known.
   */
  async faults(
    before: number,
    last: number,
    grown: ReadonlyMap<number, readonly string[]>,
    lastFalse: number,
  ): Promise<readonly SubtreeFault[]> {
    const [whole] = (
      await sql<{ hashes: string | null }>`
        select group_concat(last_seq || ' ' || lower(hex(hashes)) || ' ' || typeof(hashes), char(10)) as "hashes"
        from (select * from recorded.subtree where last_seq > ${before} and last_seq <= ${last} order by last_seq)
      `.execute(this.#recorded)
    ).rows;
    const lines = [...grown].map(([seq, hashes]) => `${seq} ${hashes.join('')} blob`);
    const stored = whole?.hashes?.split('\n') ?? [];
    if (lines.join('\n') === stored.join('\n')) return [];
    const rows = new Map(stored.map((line) => [Number(line.split(' ')[0]), line]));
    const faults: SubtreeFault[] = [];
    let latest = lastFalse;
    for (const [seq, hashes] of grown) {
      const [, hex = '', type] = rows.get(seq)?.split(' ') ?? [];
      const level = hashes.findIndex(
        (hash, index) =>
          type !== 'blob' || hash !== hex.slice(index * 2 * hashLength, (index + 1) * 2 * hashLength),
      );
      const isLonger = hex.length > hashes.length * 2 * hashLength;
      if (level < 0 && !isLonger) continue;
      const events = 2 ** (Math.max(level, 0) + 1);
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
