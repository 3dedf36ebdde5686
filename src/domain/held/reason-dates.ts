/** Since when each open reason of a device holds it, out of its own events. */
import type { CalendarDate } from '../brand.ts';
import { explainedReasons } from '../custody/check-in-answer.ts';
import type { RecordedEvent } from '../event.ts';
import type { Reason } from '../verdict.ts';

interface Dated {
  readonly key: string;
  readonly on: CalendarDate;
}

/** In the order of the reasons of the device; `events` are those of the device, oldest first. */
export const reasonDates = (events: readonly RecordedEvent[]): readonly CalendarDate[] =>
  events.reduce(afterEvent, []).map(({ on }) => on);

const afterEvent = (dates: readonly Dated[], { event, on }: RecordedEvent): readonly Dated[] => {
  const dated = (reasons: readonly Reason[]): readonly Dated[] => reasons.map(({ key }) => ({ key, on }));
  switch (event.type) {
    case 'device.removed':
      return [...dates, ...dated(event.reasons)];
    case 'device.check-in-answered': {
      const gone = explainedReasons(event.answers);
      return dates.filter(({ key }) => !gone.includes(key));
    }
    case 'inspection.signed':
      if (event.verdict.kind === 'pass') return event.reinspection === undefined ? [] : dates;
      return event.verdict.kind === 'incomplete' ? dates : [...dates, ...dated(event.verdict.reasons)];
    default:
      return dates;
  }
};
