/** Two records side by side: how far they are the same, and what each has beyond that. */
import type { CalendarDate } from '../../domain/brand.ts';
import type { RecordedEvent } from '../../domain/event.ts';
import type { Ledger } from '../ledger.ts';

/** What a record has that the other has not. */
export interface Beyond {
  readonly events: number;
  readonly signedInspections: number;
  /** Of its first and its last event; absent where there is none. */
  readonly from?: CalendarDate;
  readonly to?: CalendarDate;
}

export interface RecordComparison {
  /** Events at the beginning that are the same, byte by byte. */
  readonly same: number;
  readonly first: Beyond;
  readonly second: Beyond;
}

export const compareRecords = async (first: Ledger, second: Ledger): Promise<RecordComparison> => {
  const [a, b] = [first.export()[Symbol.asyncIterator](), second.export()[Symbol.asyncIterator]()];
  let same = 0;
  for (;;) {
    const [left, right] = [await a.next(), await b.next()];
    if (left.done !== true && right.done !== true && left.value === right.value) {
      same += 1;
      continue;
    }
    return { same, first: await beyond(left, a), second: await beyond(right, b) };
  }
};

const beyond = async (
  next: IteratorResult<string, unknown>,
  rest: AsyncIterator<string, unknown>,
): Promise<Beyond> => {
  let events = 0;
  let signedInspections = 0;
  let from: CalendarDate | undefined;
  let to: CalendarDate | undefined;
  for (let item = next; item.done !== true; item = await rest.next()) {
    const { on, event } = JSON.parse(item.value) as RecordedEvent;
    events += 1;
    if (event.type === 'inspection.signed') signedInspections += 1;
    from ??= on;
    to = on;
  }
  return {
    events,
    signedInspections,
    ...(from === undefined || to === undefined ? {} : { from, to }),
  };
};
