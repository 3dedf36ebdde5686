/** The event that gave the answer to a check which counts. */
import type { RecordedEvent } from '../domain/event.ts';

/** `events` are those of the device, oldest first. */
export const latestAnswer = (
  events: readonly RecordedEvent[],
  inspection: number,
  check: string,
): RecordedEvent | undefined =>
  events.findLast(
    ({ event }) =>
      event.type === 'inspection.answered' && event.inspection === inspection && event.check === check,
  );
