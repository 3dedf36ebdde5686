/** Since when each open reason of a device holds it, out of its own events. */
import type { CalendarDate } from '../brand.ts';
import type { RecordedEvent } from '../event.ts';

/** In the order of the reasons of the device; `events` are those of the device, oldest first. */
export const reasonDates = (events: readonly RecordedEvent[]): readonly CalendarDate[] => {
  let dates: CalendarDate[] = [];
  for (const { event, on } of events) {
    if (event.type === 'device.removed') dates = [...dates, ...event.reasons.map(() => on)];
    if (event.type !== 'inspection.signed') continue;
    if (event.verdict.kind === 'pass') dates = [];
    if (event.verdict.kind === 'remove from service')
      dates = [...dates, ...event.verdict.reasons.map(() => on)];
  }
  return dates;
};
