/** A recorded event as its row in the event table, and back. */
import type { Insertable } from 'kysely';
import type { RecordedEvent } from '../../domain/event.ts';
import { canonicalJson } from '../canonical-json.ts';
import { leafHash } from '../merkle.ts';
import type { LedgerTables } from './schema.ts';

type EventRow = Insertable<LedgerTables['event']>;

export const eventRow = (recorded: RecordedEvent): EventRow => {
  const bytes = Buffer.from(canonicalJson(recorded), 'utf8');
  return { seq: recorded.seq, bytes, leaf_hash: leafHash(bytes), ...lookUpColumns(recorded) };
};

/** The columns that repeat what the event says, so that events can be looked up. */
export const lookUpColumns = ({ event }: RecordedEvent): Pick<EventRow, 'bench_id' | 'inspection'> => ({
  bench_id: ('benchId' in event ? event.benchId : undefined) ?? null,
  inspection: ('inspection' in event ? event.inspection : undefined) ?? null,
});

/** Of bytes that this program wrote; throws `SyntaxError` where they are not JSON. */
export const recordedFrom = (bytes: Buffer): RecordedEvent =>
  JSON.parse(bytes.toString('utf8')) as RecordedEvent;
