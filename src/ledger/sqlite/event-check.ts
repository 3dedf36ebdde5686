/** Reads the events of a ledger file in order and holds each against its hash, its columns, its subtrees and the checkpoints over it. */
import { setImmediate } from 'node:timers/promises';
import { sql } from 'kysely';
import type { RecordedEvent } from '../../domain/event.ts';
import type { Checkpoint } from '../checkpoint.ts';
import type { LedgerFault } from '../ledger.ts';
import { leafHash } from '../merkle.ts';
import { TreeBuilder } from '../tree-builder.ts';
import { CheckpointCheck, type CheckpointRow } from './checkpoint-check.ts';
import { checkpointsOf, chunkSize, type EventChunk, leavesOf, readChunk, textsOf } from './event-chunk.ts';
import { isRecordedAs, parsedEvent } from './event-judge.ts';
import type { LedgerDatabase } from './schema.ts';
import { areStored, type GrownSubtrees, SubtreeCheck } from './subtree-check.ts';

/** Numbers that are named as missing at a time. */
const mostMissing = 1000;

/** In the canonical JSON of the events that make a station and its keys. */
const ofStation = '"type":"station.';

export interface EventCheckOptions {
  readonly found: (fault: LedgerFault) => void;
  /** Given every event that can be read, in order; without it only their hashes are looked at, not their words. */
  readonly onEvents?: ((events: readonly RecordedEvent[]) => Promise<void>) | undefined;
  /** A checkpoint that was kept elsewhere. */
  readonly kept?: Checkpoint | undefined;
  readonly signal?: AbortSignal | undefined;
  readonly onChecked?: ((events: number) => void) | undefined;
}

/** An event with the hash of its bytes as they are now. */
interface HashedEvent {
  readonly seq: number;
  /** Binary, as the tree builder has it. */
  readonly leaf: string;
  readonly recorded: RecordedEvent | undefined;
}

interface ReadAhead {
  readonly after: number;
  readonly chunk: EventChunk;
}

/** As a damaged file may deliver it. */
interface EventRow {
  readonly seq: number;
  readonly bytes: Buffer | string | null;
  readonly leaf_hash: Buffer | string | null;
  readonly columns: string;
}

/** Many events are looked at together; each by itself only where they are not all in their place or not to be told apart. */
export class EventCheck {
  readonly tree = new TreeBuilder();
  readonly #recorded: LedgerDatabase;
  readonly #options: EventCheckOptions;
  readonly #checkpoints: CheckpointCheck;
  readonly #subtrees: SubtreeCheck;
  #next = 1;
  /** The last event that is known to be false, or that a stored subtree contradicts; 0 while there is none. */
  #lastFalse = 0;
  #checkpointsSeen = 0;
  #keptIsThere = false;

  /** `recorded` is the file under test, attached under this name; every read of it sees one state. */
  constructor(recorded: LedgerDatabase, options: EventCheckOptions) {
    this.#recorded = recorded;
    this.#options = options;
    this.#checkpoints = new CheckpointCheck(options.found, recorded, options.onEvents !== undefined);
    this.#subtrees = new SubtreeCheck(recorded);
  }

  /** How many checkpoints of the ledger itself were held against the events. */
  get checkpointsSeen(): number {
    return this.#checkpointsSeen;
  }

  async run(): Promise<void> {
    let reading = this.#read(Number.MIN_SAFE_INTEGER);
    for (let more = true; more; ) {
      this.#options.signal?.throwIfAborted();
      const read = await reading;
      const { count, last } = read.chunk;
      more = count === chunkSize && Number.isSafeInteger(last);
      if (more) {
        reading = this.#read(last ?? 0);
        reading.catch(() => undefined);
        // The statement is under way only when what leads up to it has had its turn.
        await setImmediate();
      }
      await this.#check(read);
      this.#options.onChecked?.(this.tree.size);
    }
    const last = this.#next - 1;
    for (const fault of await this.#subtrees.strays(last)) this.#options.found(fault);
    for (const row of await this.#checkpointRows(last, Number.MAX_SAFE_INTEGER))
      this.#checkpoint(row, undefined);
    await this.#checkpoints.settle();
    await this.#checkpoints.settle();
    this.#judgeKept();
  }

  /** Names every number from the one that is due to the one before `seq`. */
  nameMissing(seq: number): void {
    for (let named = 0; this.#next < seq && named < mostMissing; this.#next += 1, named += 1) {
      this.#isFalse({ kind: 'event missing', seq: this.#next }, this.#next);
    }
    this.#next = Math.max(this.#next, seq);
  }

  #isFalse(fault: LedgerFault, seq: number): void {
    this.#options.found(fault);
    this.#lastFalse = Math.max(this.#lastFalse, seq);
  }

  /** One statement, so that it runs to its end while the events before are being hashed. */
  async #read(after: number): Promise<ReadAhead> {
    return { after, chunk: await readChunk(this.#recorded, after, this.#options.onEvents !== undefined) };
  }

  async #check({ after, chunk }: ReadAhead): Promise<void> {
    const { first, last } = chunk;
    if (first === null || last === null) return;
    const together = this.#together(chunk, first, last);
    const events = together ?? (await this.#oneByOne(first, last));
    const checkpoints = new Map(checkpointsOf(chunk).map((row) => [row.size, row]));
    const grown: GrownSubtrees[] = [];
    for (const { seq, leaf, recorded } of events) {
      const completed = this.tree.add(leaf);
      if (recorded !== undefined) await this.#checkpoints.learn(recorded.event);
      const inPlace = this.tree.size === seq;
      if (inPlace && completed !== '') grown.push({ seq, hashes: completed });
      const checkpoint = checkpoints.get(seq);
      if (checkpoint !== undefined) {
        checkpoints.delete(seq);
        this.#checkpoint(checkpoint, inPlace && this.#lastFalse === 0 ? this.tree.rootHash() : undefined);
      }
      if (inPlace && seq === this.#options.kept?.size) this.#keptIsThere = this.#isKept(this.#options.kept);
    }
    for (const row of checkpoints.values()) this.#checkpoint(row, undefined);
    if (together === undefined || !areStored(grown, chunk)) {
      for (const fault of await this.#subtrees.faults(after, last, grown, this.#lastFalse))
        this.#isFalse(fault, fault.lastSeq);
    }
    await this.#checkpoints.settle();
    const readable = events.map(({ recorded }) => recorded).filter((recorded) => recorded !== undefined);
    await this.#options.onEvents?.(readable);
  }

  /** The events where all of them are in their place and can be told from one another; else `undefined`. */
  #together(read: EventChunk, first: number, last: number): readonly HashedEvent[] | undefined {
    const { count, columns, events } = read;
    if (first !== this.#next || last - first + 1 !== count) return undefined;
    const leaves = leavesOf(read);
    const beside = columns?.split('\n');
    if (leaves === undefined || (beside !== undefined && beside.length !== count)) return undefined;
    this.#next = last + 1;
    for (const index of leaves.changed)
      this.#isFalse({ kind: 'event changed', seq: first + index }, first + index);
    const texts = beside !== undefined || events?.includes(ofStation) === true ? textsOf(read) : undefined;
    return leaves.hashes.map((leaf, index) => {
      const seq = first + index;
      const text = texts?.[index];
      if (text === undefined) return { seq, leaf, recorded: undefined };
      const isChanged = leaves.changed.has(index);
      return { seq, leaf, recorded: isChanged ? parsedEvent(text) : this.#words(seq, text, beside?.[index]) };
    });
  }

  async #oneByOne(first: number, last: number): Promise<readonly HashedEvent[]> {
    const { rows } = await sql<EventRow>`
      select seq, bytes, leaf_hash, quote(bench_id) || ' ' || quote(inspection) as "columns"
      from recorded.event where seq between ${first} and ${last} order by seq
    `.execute(this.#recorded);
    return rows.map((row) => {
      this.nameMissing(row.seq);
      this.#next = row.seq + 1;
      const bytes = Buffer.from(row.bytes ?? '');
      const leaf = leafHash(bytes);
      const isStored =
        Buffer.isBuffer(row.bytes) && Buffer.isBuffer(row.leaf_hash) && row.leaf_hash.equals(leaf);
      if (!isStored) this.#isFalse({ kind: 'event changed', seq: row.seq }, row.seq);
      const recorded = isStored
        ? this.#words(row.seq, bytes.toString('utf8'), row.columns)
        : parsedEvent(bytes.toString('utf8'));
      return { seq: row.seq, leaf: leaf.toString('latin1'), recorded };
    });
  }

  /** The event, where it can be read and somebody wants its words; the checkpoints want those that make keys. */
  #words(seq: number, text: string, columns: string | undefined): RecordedEvent | undefined {
    if (this.#options.onEvents === undefined && !text.includes(ofStation)) return undefined;
    const recorded = parsedEvent(text);
    if (recorded === undefined || !isRecordedAs(recorded, { seq, text, columns }))
      this.#options.found({ kind: 'event changed', seq });
    return recorded;
  }

  /** Those over more than `from` events and at most `to`. */
  #checkpointRows(from: number, to: number): Promise<CheckpointRow[]> {
    return this.#recorded
      .selectFrom('checkpoint')
      .select(['size', 'note'])
      .where('size', '>', from)
      .where('size', '<=', to)
      .execute();
  }

  /** `rootHash` is absent where the events under it are known to be false; where there are none, the checkpoint is. */
  #checkpoint(row: CheckpointRow, rootHash: string | undefined): void {
    this.#checkpointsSeen += 1;
    if (rootHash === undefined && this.#lastFalse === 0)
      this.#options.found({ kind: 'checkpoint differs', size: row.size });
    else this.#checkpoints.check(row, rootHash);
  }

  #isKept({ rootHash }: Checkpoint): boolean {
    return rootHash.toString('hex') === this.tree.rootHash();
  }

  #judgeKept(): void {
    const { kept, found } = this.#options;
    if (kept === undefined || kept.size === 0 || this.#keptIsThere) return;
    const recorded = this.tree.size;
    found(
      kept.size > recorded
        ? { kind: 'record lost events', covered: kept.size, recorded }
        : { kind: 'record rewritten', covered: kept.size },
    );
  }
}
