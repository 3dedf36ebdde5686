/** Records events within one transaction: as rows, in the Merkle tree, and in the projections. */
import { z } from 'zod';
import type { CalendarDate } from '../../domain/brand.ts';
import {
  type DomainEvent,
  type Occasion,
  type RecordedEvent,
  recordedEventSchema,
} from '../../domain/event.ts';
import type { Station } from '../../domain/evolve.ts';
import { checkpointKeyFrom, checkpointSecretName, signCheckpoint } from '../checkpoint-key.ts';
import { addLeaf, type Frontier, frontierBytes, frontierFrom, rootHash } from '../merkle.ts';
import { LedgerDamaged } from '../storage-refusal.ts';
import { eventRow, recordedFrom } from './event-row.ts';
import { batchSize, project } from './projector.ts';
import type { LedgerDatabase } from './schema.ts';
import { stateOf } from './state.ts';

export class Recorder {
  readonly #database: LedgerDatabase;
  #frontier: Frontier;

  private constructor(database: LedgerDatabase, frontier: Frontier) {
    this.#database = database;
    this.#frontier = frontier;
  }

  /** `database` is a transaction that holds the write lock. Throws `LedgerDamaged` rather than build on a false tree. */
  static async in(database: LedgerDatabase): Promise<Recorder> {
    return new Recorder(database, await currentFrontier(database));
  }

  /**
   * Returns the events as they are from now on, with their numbers. Throws where one does not fit its schema. The tree
   * head is left to `finish`.
   */
  async record({ at, on, by }: Occasion, events: readonly DomainEvent[]): Promise<readonly RecordedEvent[]> {
    const first = this.#frontier.size + 1;
    const rows = events.map((event, index) => eventRow(validated({ seq: first + index, at, on, by, event })));
    for (let start = 0; start < rows.length; start += batchSize) {
      await this.#database
        .insertInto('event')
        .values(rows.slice(start, start + batchSize))
        .execute();
    }
    const recorded = rows.map(({ bytes }) => recordedFrom(bytes));
    await project(this.#database, recorded);
    await this.#grow(rows.map(({ leaf_hash: leaf }) => leaf));
    if (recorded.length > 0) await this.#checkpointIfDue(on, recorded);
    return recorded;
  }

  /** Signs everything that is recorded so far. Does nothing where the latest checkpoint covers it, or the station has no key. */
  async signCheckpoint(): Promise<void> {
    const { size } = this.#frontier;
    const latest = await this.#latestCheckpoint();
    const signer = latest?.size === size ? undefined : await this.#signer();
    if (signer === undefined) return;
    const note = signCheckpoint(signer.stationId, signer.key, { size, rootHash: rootHash(this.#frontier) });
    await this.#database.insertInto('checkpoint').values({ size, note }).execute();
  }

  /** One with every signed inspection, and with the first events of a calendar day. */
  async #checkpointIfDue(on: CalendarDate, recorded: readonly RecordedEvent[]): Promise<void> {
    if (recorded.some(({ event }) => event.type === 'inspection.signed') || (await this.#isFirstOf(on)))
      await this.signCheckpoint();
  }

  async #isFirstOf(on: CalendarDate): Promise<boolean> {
    const latest = await this.#latestCheckpoint();
    if (latest === undefined) return true;
    const last = await this.#database
      .selectFrom('event')
      .select('bytes')
      .where('seq', '=', latest.size)
      .executeTakeFirst();
    return last === undefined || recordedFrom(last.bytes).on !== on;
  }

  #latestCheckpoint(): Promise<{ readonly size: number } | undefined> {
    return this.#database
      .selectFrom('checkpoint')
      .select('size')
      .orderBy('size', 'desc')
      .limit(1)
      .executeTakeFirst();
  }

  /** Throws `LedgerDamaged` where the secret is not that of the public key in the record. */
  async #signer() {
    const station = await this.#database.selectFrom('station').select('state').executeTakeFirst();
    const { stationId, checkpointKeys } = station === undefined ? {} : stateOf<Partial<Station>>(station);
    const publicKey = checkpointKeys?.at(-1);
    if (stationId === undefined || publicKey === undefined) return undefined;
    const secret = await this.#database
      .selectFrom('secret')
      .select('value')
      .where('name', '=', checkpointSecretName)
      .executeTakeFirst();
    const key = secret && checkpointKeyFrom(secret.value);
    if (key?.publicKey !== publicKey)
      throw new LedgerDamaged('The key of the checkpoints is not the one in the record.');
    return { stationId, key };
  }

  async #grow(leaves: readonly Buffer[]): Promise<void> {
    const subtrees: { last_seq: number; hashes: Buffer }[] = [];
    for (const leaf of leaves) {
      const { frontier, completed } = addLeaf(this.#frontier, leaf);
      this.#frontier = frontier;
      if (completed.length > 0) subtrees.push({ last_seq: frontier.size, hashes: Buffer.concat(completed) });
    }
    for (let start = 0; start < subtrees.length; start += batchSize) {
      await this.#database
        .insertInto('subtree')
        .values(subtrees.slice(start, start + batchSize))
        .execute();
    }
  }

  async finish(): Promise<void> {
    const { size } = this.#frontier;
    await this.#database
      .updateTable('tree_head')
      .set({ size, root_hash: rootHash(this.#frontier), frontier: frontierBytes(this.#frontier) })
      .execute();
  }
}

const validated = (recorded: unknown): RecordedEvent => {
  const parsed = recordedEventSchema.safeParse(recorded);
  if (!parsed.success) {
    throw new TypeError(`An event does not fit its schema: ${z.prettifyError(parsed.error)}`, {
      cause: parsed.error,
    });
  }
  return parsed.data;
};

const currentFrontier = async (database: LedgerDatabase): Promise<Frontier> => {
  const head = await database
    .selectFrom('tree_head')
    .select(['size', 'root_hash', 'frontier'])
    .select((builder) =>
      builder
        .selectFrom('event')
        .select(({ fn }) => fn.max<number | null>('seq').as('latest'))
        .as('latest'),
    )
    .executeTakeFirst();
  const frontier = head && frontierFrom(head.size, head.frontier);
  if (frontier === undefined || !rootHash(frontier).equals(head?.root_hash ?? Buffer.alloc(0))) {
    throw new LedgerDamaged('The tree head contradicts itself.');
  }
  if ((head?.latest ?? 0) !== frontier.size) {
    throw new LedgerDamaged(
      `The tree has ${frontier.size} leaves, and the last event is number ${head?.latest ?? 0}.`,
    );
  }
  return frontier;
};
