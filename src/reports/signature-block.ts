/** Who signed, on what authority, and when: together on one page. */
import type { Designation } from '../domain/person.ts';
import { leadingOn, whole } from './prose.ts';
import type { ReportWords, Told } from './report-words.ts';
import type { Strip } from './strip.ts';
import { facts } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface ReportSignature {
  /** As the record had them when it was signed. */
  readonly name: string;
  readonly badge: string;
  /** As it has them now. */
  readonly now: { readonly name: string; readonly badge: string };
  /** As it stood on that day; absent where the record has none. */
  readonly designation?: Designation | undefined;
  /** The calendar date at the station, and the moment in UTC. */
  readonly on: string;
  readonly at: string;
  /** The number of the event in the record. */
  readonly seq: number;
}

const thenAndNow = (then: string, now: string, words: ReportWords): Told =>
  then === now ? [then] : words.tell('signedAs', { then, now });

export const signatureBlock = (
  { name, badge, now, designation, on, at, seq }: ReportSignature,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => [
  leadingOn(
    facts(
      [
        [words.line('signedBy'), thenAndNow(name, now.name, words)],
        [words.line('badge'), thenAndNow(badge, now.badge, words)],
        [
          words.line('designation'),
          designation === undefined
            ? words.tell('noDesignation')
            : words.tell('designatedBy', {
                by: designation.designatedBy,
                on: words.date(designation.designatedOn),
              }),
        ],
        [
          words.line('trainingValidUntil'),
          designation === undefined ? '–' : words.dateLine(designation.trainingValidUntil),
        ],
        [words.line('signedAt'), words.tell('signedMoment', { on: words.date(on), at })],
      ],
      widthMm,
    ),
  ),
  whole(words.tell('signedWithPin', { seq }), widthMm, textStyles.soft, 1),
];
