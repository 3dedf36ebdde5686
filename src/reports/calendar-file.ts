/** A calendar file by RFC 5545 (iCalendar): all-day events for whatever calendar the people of the bench use. */

/** Dates are calendar dates in ISO 8601. */
export interface CalendarEvent {
  /** The same whenever the file is made anew, so that a calendar moves the event instead of adding one. */
  readonly uid: string;
  readonly on: string;
  readonly summary: string;
  /** Line by line. */
  readonly description: readonly string[];
}

export interface CalendarFile {
  /** When it was made, moment in UTC in ISO 8601. */
  readonly at: string;
  readonly events: readonly CalendarEvent[];
}

/** In UTF-8. `dayAfter` is the next calendar date, for an event ends before its DTEND (RFC 5545 section 3.6.1). */
export const toCalendarFile = (
  { at, events }: CalendarFile,
  dayAfter: (on: string) => string,
): Uint8Array => {
  const stamp = `${at.slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//SRL Bench//Bench plan//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...events.flatMap(({ uid, on, summary, description }) => [
      'BEGIN:VEVENT',
      `UID:${escaped(uid)}`,
      `DTSTAMP:${stamp}`,
      `DTSTART;VALUE=DATE:${basic(on)}`,
      `DTEND;VALUE=DATE:${basic(dayAfter(on))}`,
      `SUMMARY:${escaped(summary)}`,
      `DESCRIPTION:${escaped(description.join('\n'))}`,
      // It takes up no time of a person's day.
      'TRANSP:TRANSPARENT',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return Buffer.from(lines.map((line) => `${folded(line)}\r\n`).join(''));
};

const basic = (date: string): string => date.replaceAll('-', '');

/** TEXT (section 3.3.11); control characters other than the tab have no place in it. */
const escaped = (text: string): string =>
  text
    .replaceAll(/\r\n?/g, '\n')
    .replaceAll(/[\\;,]/g, (mark) => `\\${mark}`)
    .replaceAll('\n', '\\n')
    .replaceAll(/(?!\t)\p{Cc}/gu, '');

const mostOctets = 75;

/** A line of at most 75 octets, then a line break and a space before more of it (section 3.1); no character is torn. */
const folded = (line: string): string => {
  let octets = 0;
  let text = '';
  for (const character of line) {
    const size = Buffer.byteLength(character);
    if (octets + size > mostOctets) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += size;
  }
  return text;
};
