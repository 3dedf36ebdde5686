/** What of a record was corrected: both what was said and what is said now, who says so, and why. */
import type { Correction } from '../domain/amendment.ts';
import type { Answer } from '../domain/answer.ts';
import type { CalendarDate } from '../domain/brand.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import type { Check } from '../domain/procedure.ts';
import { answerCell } from './answer-cell.ts';
import { heading, leadingOn, prose, whole } from './prose.ts';
import type { ReportWords } from './report-words.ts';
import type { Strip } from './strip.ts';
import { type Cell, cell, table } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface RecordedCorrection {
  readonly on: CalendarDate;
  readonly by: string;
  readonly because: string;
  /** Number of the event that corrects, and of the one that is corrected. */
  readonly seq: number;
  readonly amends: number;
  /** Names stand in it, not IDs. */
  readonly correction: Correction;
  /** The check whose answer is corrected, and the inspection it belongs to. */
  readonly of?: { readonly inspection: number; readonly check: Check | undefined } | undefined;
}

/** Nothing where nothing was corrected. */
export const correctionStrips = (
  corrections: readonly RecordedCorrection[],
  modelSheet: ModelSheet,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] =>
  corrections.length === 0
    ? []
    : [
        heading(words.line('corrections'), widthMm),
        leadingOn(prose(words.tell('correctionsText'), widthMm, textStyles.soft)),
        table(
          [
            { title: words.line('date'), share: 4 },
            { title: words.line('corrected'), share: 5 },
            { title: words.line('was'), share: 5 },
            { title: words.line('isNow'), share: 5 },
            { title: words.line('byAndWhy'), share: 7 },
          ],
          corrections.map((each) => [
            [
              ...cell(words.told(words.date(each.on))),
              ...cell(words.tell('eventNumber', { seq: each.seq }), textStyles.soft),
            ],
            [
              ...cell(whatOf(each, words)),
              ...cell(words.tell('eventNumber', { seq: each.amends }), textStyles.soft),
            ],
            valueCell(each, each.correction.was, modelSheet, words),
            valueCell(each, each.correction.now, modelSheet, words),
            [...cell(each.by), ...cell(`“${each.because}”`, textStyles.soft)],
          ]),
          widthMm,
        ),
      ];

/** Under an answer: that it was corrected, and by which event. */
export const correctedAnswer = (
  corrections: readonly RecordedCorrection[],
  check: string,
  words: ReportWords,
): Cell =>
  corrections.flatMap(({ seq, correction }) =>
    correction.field === 'answer' && correction.check === check
      ? cell(words.tell('correctedBy', { seq }), textStyles.soft)
      : [],
  );

/** Under what identifies the device: which of it was corrected, and by which event. */
export const correctedFacts = (
  corrections: readonly RecordedCorrection[],
  words: ReportWords,
  widthMm: number,
): readonly Strip[] =>
  corrections.flatMap(({ seq, correction: { field } }) =>
    field === 'answer'
      ? []
      : [
          whole(
            words.tell('correctedFieldBy', { seq, field: words.message(`corrected-${field}`) }),
            widthMm,
            textStyles.soft,
            1,
          ),
        ],
  );

const whatOf = ({ correction, of }: RecordedCorrection, words: ReportWords) => {
  if (correction.field !== 'answer') return words.tell(`corrected-${correction.field}`);
  const title = of?.check?.title ?? { en: correction.check, es: correction.check };
  return words.tell('correctedAnswer', { inspection: of?.inspection ?? '', check: title });
};

const valueCell = (
  { of }: RecordedCorrection,
  value: Answer | string | undefined,
  modelSheet: ModelSheet,
  words: ReportWords,
): Cell => {
  if (value === undefined || value === '') return cell(words.tell('none'));
  if (typeof value === 'string') return cell(value);
  return of?.check === undefined ? cell(value.kind) : answerCell(of.check, value, modelSheet, words);
};
