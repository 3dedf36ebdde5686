/** Records events within one transaction: as rows, in the Merkle tree, and in the projections. */
import { z } from 'zod';
import {
  type DomainEvent,
  type Occasion,
  type RecordedEvent,
  recordedEventSchema,
} from '../../domain/event.ts';
import { type Frontier, frontierBytes, frontierFrom, rootHash, withLeaf } from '../merkle.ts';
import { LedgerDamaged } from '../storage-refusal.ts';
import { eventRow, recordedFrom } from './event-row.ts';
import { batchSize, project } from './projector.ts';
import type { LedgerDatabase } from './schema.ts';

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
    this.#frontier = rows.reduce((frontier, row) => withLeaf(frontier, row.leaf_hash), this.#frontier);
    return recorded;
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
