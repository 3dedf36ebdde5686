/**
 * The text in the QR symbol of a tag: words that any phone can show a person, and that this program reads back.
 *
 * Only capitals, digits and spaces, so that it stays in the alphanumeric mode of ISO/IEC 18004 and survives a keyboard
 * scanner on any keyboard layout; no more than 61 of them up to tag 99, so that they fit QR version 3 at level M. Dates
 * are ISO 8601 basic (`20261124`). `H4RP` is the mark of the station; the last word is the authentication code over all
 * words before it.
 *
 *   SRL H4RP K7M3X43SXJ TAG3 PASS 20261124 DUE 20271124 9T4QK2MX
 *   SRL H4RP K7M3X43SXJ TAG4 REMOVED 20261124 77Z0AEWC
 */
import { type BenchId, type CalendarDate, calendarDate } from './brand.ts';
import type { QuarantineTag, StatusTag, TagSeal } from './tag-content.ts';

interface TagHead {
  readonly benchId: BenchId;
  readonly tagNumber: number;
}

/** What a tag claims: a pass with its due date, or a removal. */
export type TagClaim =
  | (TagHead & { readonly kind: 'status'; readonly inspectedOn: CalendarDate; readonly dueOn: CalendarDate })
  | (TagHead & { readonly kind: 'quarantine'; readonly removedOn: CalendarDate });

export type TagText = TagClaim & { readonly seal: TagSeal };

/** The words that the authentication code is made over. */
export const sealedWords = (claim: TagClaim, mark: string): string => {
  const head = `SRL ${mark} ${claim.benchId} TAG${claim.tagNumber}`;
  switch (claim.kind) {
    case 'status':
      return `${head} PASS ${basic(claim.inspectedOn)} DUE ${basic(claim.dueOn)}`;
    case 'quarantine':
      return `${head} REMOVED ${basic(claim.removedOn)}`;
  }
};

export const writeTagText = (tag: StatusTag | QuarantineTag): string =>
  `${sealedWords(tag, tag.seal.mark)} ${tag.seal.code}`;

const symbol = '[0-9A-HJKMNP-TV-Z]';
const pattern = new RegExp(
  `^SRL (${symbol}{4}) (${symbol}{10}) TAG([1-9]\\d{0,5}) (?:PASS (\\d{8}) DUE (\\d{8})|REMOVED (\\d{8})) (${symbol}{8})$`,
);

/** The tag that a QR text describes, or `undefined` where it has another form. Nothing of it is checked against the record. */
export const readTagText = (text: string): TagText | undefined => {
  const found = pattern.exec(text.trim());
  if (found === null) return undefined;
  const [, mark = '', benchId, number, inspected, due, removed, code = ''] = found;
  const head = { benchId: benchId as BenchId, tagNumber: Number(number), seal: { mark, code } };
  if (inspected !== undefined && due !== undefined) {
    return { kind: 'status', ...head, inspectedOn: extended(inspected), dueOn: extended(due) };
  }
  return removed === undefined ? undefined : { kind: 'quarantine', ...head, removedOn: extended(removed) };
};

/**
 * True of a text that set out to be a tag of this program, whatever has become of it: no single character that is
 * altered, lost or added takes away both of its landmarks.
 */
export const looksLikeTagText = (text: string): boolean =>
  text.length > 30 && (/^SRL /.test(text.trim()) || / TAG\d+ /.test(text));

const basic = (date: CalendarDate): string => date.replaceAll('-', '');
const extended = (date: string): CalendarDate =>
  calendarDate(`${date.slice(0, 4)}-${date.slice(4, 6)}-${date.slice(6)}`);
