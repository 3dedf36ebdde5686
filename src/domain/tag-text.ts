/**
 * The text in the QR symbol of a tag: words that any phone can show a person, and that this program reads back.
 *
 * Only capitals, digits and spaces, so that it stays in the alphanumeric mode of ISO/IEC 18004 and survives a keyboard
 * scanner on any keyboard layout. Dates are ISO 8601 basic (`20261124`).
 *
 *   SRLBENCH K7M3X4Q9TD TAG 3 PASS 20261124 DUE 20271124
 *   SRLBENCH K7M3X4Q9TD TAG 4 REMOVED 20261124
 */
import { type BenchId, type CalendarDate, calendarDate } from './brand.ts';
import type { QuarantineTag, StatusTag } from './tag-content.ts';

export type TagText =
  | {
      readonly kind: 'status';
      readonly benchId: BenchId;
      readonly tagNumber: number;
      readonly inspectedOn: CalendarDate;
      readonly dueOn: CalendarDate;
    }
  | {
      readonly kind: 'quarantine';
      readonly benchId: BenchId;
      readonly tagNumber: number;
      readonly removedOn: CalendarDate;
    };

export const writeTagText = (tag: StatusTag | QuarantineTag): string => {
  const head = `SRLBENCH ${tag.benchId} TAG ${tag.tagNumber}`;
  switch (tag.kind) {
    case 'status':
      return `${head} PASS ${basic(tag.inspectedOn)} DUE ${basic(tag.dueOn)}`;
    case 'quarantine':
      return `${head} REMOVED ${basic(tag.removedOn)}`;
  }
};

const pattern =
  /^SRLBENCH ([0-9A-HJKMNP-TV-Z]{10}) TAG (\d{1,6}) (?:PASS (\d{8}) DUE (\d{8})|REMOVED (\d{8}))$/;

/** The tag that a QR text describes, or `undefined` where the text is not one of ours. The bench ID is not yet checked. */
export const readTagText = (text: string): TagText | undefined => {
  const found = pattern.exec(text.trim());
  if (found === null) return undefined;
  const [, benchId, number, inspected, due, removed] = found;
  const head = { benchId: benchId as BenchId, tagNumber: Number(number) };
  if (inspected !== undefined && due !== undefined) {
    return { kind: 'status', ...head, inspectedOn: extended(inspected), dueOn: extended(due) };
  }
  return removed === undefined ? undefined : { kind: 'quarantine', ...head, removedOn: extended(removed) };
};

const basic = (date: CalendarDate): string => date.replaceAll('-', '');
const extended = (date: string): CalendarDate =>
  calendarDate(`${date.slice(0, 4)}-${date.slice(4, 6)}-${date.slice(6)}`);
