/** What was answered to a check, in words: good, or each finding with its place and its remark. */
import type { Answer, Finding } from '../domain/answer.ts';
import { isBelowMinimum } from '../domain/lifeline/below-minimum.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import type { Check, ConditionCheck } from '../domain/procedure.ts';
import type { ReportWords, Told } from './report-words.ts';
import { type Cell, cell } from './table.ts';
import { textStyles } from './type-sizes.ts';

const strong = { ...textStyles.cell, weight: 'bold' as const };

/** Whatever is not good stands in bold, so that it is found at a glance and in print without colour. */
export const answerCell = (
  check: Check,
  answer: Answer | undefined,
  { ratedLengthM, lifelineMinimumDiameterMm: minimumMm }: ModelSheet,
  words: ReportWords,
): Cell => {
  if (answer === undefined) return cell(words.tell('notAnswered'), strong);
  switch (answer.kind) {
    case 'good':
      return cell(goodWords(check, words));
    case 'marking':
      return cell(
        words.tell(`marking-${answer.state}`),
        answer.state === 'legible' ? textStyles.cell : strong,
      );
    case 'length': {
      const isShort = Math.round(answer.confirmedM * 1000) < Math.round(ratedLengthM * 1000);
      const values = { confirmed: words.length(answer.confirmedM), rated: words.length(ratedLengthM) };
      return cell(words.tell('payout', values), isShort ? strong : textStyles.cell);
    }
    case 'diameters':
      return answer.readings.length === 0
        ? cell(words.tell('noReading'))
        : answer.readings.flatMap(({ positionM, diameterMm }) => {
            const isThin = minimumMm !== undefined && isBelowMinimum(diameterMm, minimumMm);
            const values = { diameter: words.number(diameterMm), position: words.length(positionM) };
            return cell(words.tell('reading', values), isThin ? strong : textStyles.cell);
          });
    case 'defects':
      return answer.findings.flatMap((finding) => findingCell(check, finding, words));
  }
};

const goodWords = (check: Check, words: ReportWords): Told =>
  check.kind === 'condition' && check.answers !== undefined
    ? words.told(check.answers.good)
    : words.tell('good');

const findingCell = (check: Check, { defect, positionM, note }: Finding, words: ReportWords): Cell => [
  ...cell(check.kind === 'condition' ? defectWords(check, defect, words) : defect, strong),
  ...(positionM === undefined ? [] : cell(words.tell('atPosition', { position: words.length(positionM) }))),
  ...(note === undefined || note === '' ? [] : cell(`“${note}”`)),
];

const defectWords = (check: ConditionCheck, key: string, words: ReportWords): Told => {
  const known = check.defects.find((defect) => defect.key === key);
  return known === undefined ? [key] : words.told(known.label);
};
