/** Reads proofs out of a ledger: a few hashes of its stored subtrees, checked before they are handed out. */
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { readCheckpoint, type SignedCheckpoint } from '../checkpoint.ts';
import { proofText, proves } from '../inclusion-proof.ts';
import { hashLength } from '../merkle.ts';
import {
  consistencySpans,
  inclusionSpans,
  isConsistent,
  type PerfectSubtree,
  perfectSubtreesOf,
  type Span,
  spanHash,
} from '../merkle-proof.ts';
import { LedgerDamaged } from '../storage-refusal.ts';
import type { LedgerDatabase } from './schema.ts';

export class Prover {
  readonly #database: LedgerDatabase;

  /** `database` is a transaction: every read of it sees the same state. */
  constructor(database: LedgerDatabase) {
    this.#database = database;
  }

  /**
   * The proof of an event against a checkpoint of this record, as text; of the first checkpoint that covers it where none is
   * given. Refuses with `event-unknown`, `checkpoint-does-not-cover`, `checkpoint-ahead` or `checkpoint-not-of-record`.
   */
  async prove(
    seq: number,
    checkpoint?: SignedCheckpoint & { readonly text: string },
  ): Promise<string | Refusal> {
    const event = await this.#database
      .selectFrom('event')
      .select('bytes')
      .where('seq', '=', seq)
      .executeTakeFirst();
    if (event === undefined) return refusal('event-unknown', { seq }, 'seq');
    const covering = checkpoint ?? (await this.#firstCovering(seq));
    if (covering === undefined || covering.size < seq)
      return refusal('checkpoint-does-not-cover', { seq, size: covering?.size ?? 0 }, 'checkpoint');
    const { size } = await this.#head();
    if (covering.size > size)
      return refusal('checkpoint-ahead', { size: covering.size, recorded: size }, 'checkpoint');
    const path = await this.#hashes(inclusionSpans(seq - 1, covering.size));
    const proof = { index: seq - 1, path, checkpoint: covering };
    if (!proves(proof, event.bytes)) {
      if (checkpoint !== undefined)
        return refusal('checkpoint-not-of-record', { size: covering.size }, 'checkpoint');
      throw new LedgerDamaged(`Event ${seq} is not what the checkpoint over ${covering.size} events says.`);
    }
    return proofText({ ...proof, checkpoint: covering.text });
  }

  /**
   * The hashes that show that the record as it is begins with everything that the checkpoint covers. Refuses with
   * `checkpoint-ahead` or `checkpoint-not-of-record`.
   */
  async proveGrowth(checkpoint: SignedCheckpoint): Promise<readonly Buffer[] | Refusal> {
    const head = await this.#head();
    const { size } = checkpoint;
    if (size > head.size) return refusal('checkpoint-ahead', { size, recorded: head.size }, 'checkpoint');
    const path = size === 0 ? [] : await this.#hashes(consistencySpans(size, head.size));
    return isConsistent(checkpoint, head, path)
      ? path
      : refusal('checkpoint-not-of-record', { size }, 'checkpoint');
  }

  async #firstCovering(seq: number) {
    const row = await this.#database
      .selectFrom('checkpoint')
      .select('note')
      .where('size', '>=', seq)
      .orderBy('size')
      .limit(1)
      .executeTakeFirst();
    if (row === undefined) return undefined;
    const checkpoint = readCheckpoint(row.note);
    if (checkpoint === undefined) throw new LedgerDamaged('A checkpoint cannot be read.');
    return { ...checkpoint, text: row.note };
  }

  async #head(): Promise<{ readonly size: number; readonly rootHash: Buffer }> {
    const head = await this.#database
      .selectFrom('tree_head')
      .select(['size', 'root_hash'])
      .executeTakeFirst();
    if (head === undefined) throw new LedgerDamaged('The tree head is missing.');
    return { size: head.size, rootHash: head.root_hash };
  }

  /** O(log n) reads by primary key. */
  async #hashes(spans: readonly Span[]): Promise<readonly Buffer[]> {
    const hashes: Buffer[] = [];
    for (const span of spans) {
      const roots: Buffer[] = [];
      for (const subtree of perfectSubtreesOf(span)) roots.push(await this.#hash(subtree));
      hashes.push(spanHash(roots));
    }
    return hashes;
  }

  async #hash({ level, position }: PerfectSubtree): Promise<Buffer> {
    const lastSeq = (position + 1) * 2 ** level;
    const stored = level === 0 ? await this.#leaf(lastSeq) : await this.#subtrees(lastSeq);
    const start = Math.max(level - 1, 0) * hashLength;
    const hash = stored?.subarray(start, start + hashLength);
    if (hash?.length !== hashLength)
      throw new LedgerDamaged(
        `The subtree of ${2 ** level} events that ends with event ${lastSeq} is missing.`,
      );
    return hash;
  }

  async #leaf(seq: number): Promise<Buffer | undefined> {
    const row = await this.#database
      .selectFrom('event')
      .select('leaf_hash')
      .where('seq', '=', seq)
      .executeTakeFirst();
    return row?.leaf_hash;
  }

  async #subtrees(lastSeq: number): Promise<Buffer | undefined> {
    const row = await this.#database
      .selectFrom('subtree')
      .select('hashes')
      .where('last_seq', '=', lastSeq)
      .executeTakeFirst();
    return row?.hashes;
  }
}
