/** Who signed, on what authority, and when. */
import type { Designation } from '../domain/person.ts';
import { prose } from './prose.ts';
import type { ReportWords } from './report-words.ts';
import type { Strip } from './strip.ts';
import { facts } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface ReportSignature {
  readonly name: string;
  readonly badge: string;
  /** As it stood on that day; absent where the record has none. */
  readonly designation?: Designation | undefined;
  /** The calendar date at the station, and the moment in UTC. */
  readonly on: string;
  readonly at: string;
  /** The number of the event in the record. */
  readonly seq: number;
}

export const signatureBlock = (
  { name, badge, designation, on, at, seq }: ReportSignature,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => [
  facts(
    [
      [words.line('signedBy'), name],
      [words.line('badge'), badge],
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
  prose(words.tell('signedWithPin', { seq }), widthMm, textStyles.soft, 1),
];
