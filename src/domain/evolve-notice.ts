/** How a manufacturer's notice comes to be: it is recorded once and never changed. */
import type { RecordedEvent } from './event.ts';
import type { Notice } from './recall/notice.ts';

export const evolveNotice = (
  notice: Notice | undefined,
  { event, on, by }: RecordedEvent,
): Notice | undefined =>
  event.type === 'notice.recorded'
    ? { ...event.text, notice: event.notice, matched: event.matched, recordedBy: by, recordedOn: on }
    : notice;
