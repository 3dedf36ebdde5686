/** The map of a lifeline on paper: every inspection a length of rope, to scale, findings over it and diameters under it. */
import { diameterText } from '../domain/length.ts';
import type { LifelineFinding, LifelineInspection } from '../domain/lifeline/lifeline-inspection.ts';
import { type LifelineMap, lifelineMap } from '../domain/lifeline/map.ts';
import type { Language } from '../domain/message.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import { textAt } from '../typesetting/paragraph.ts';
import type { PageMark, Rectangle } from '../typesetting/primitive.ts';
import { textWidthMm } from '../typesetting/typeface.ts';
import { lifelineRow } from './lifeline-row.ts';
import { mapSizes } from './lifeline-sizes.ts';
import { heading, leadingOn, prose } from './prose.ts';
import type { ReportWords } from './report-words.ts';
import type { Piece, Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

const labelStyle = textStyles.soft;

/** The newest inspection first. Nothing where none saw anything along the lifeline. */
export const lifelineStrips = (
  inspections: readonly LifelineInspection[],
  modelSheet: ModelSheet,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] =>
  inspections.every(({ findings, readings }) => findings.length + readings.length === 0)
    ? []
    : [
        heading(words.line('lifelineMap'), widthMm),
        leadingOn(prose(words.tell('lifelineMapText'), widthMm, textStyles.soft)),
        mapStrip(inspections, modelSheet, words, widthMm),
        prose(words.tell('criterionDecides'), widthMm, textStyles.soft),
      ];

const mapStrip = (
  inspections: readonly LifelineInspection[],
  { ratedLengthM, lifelineMinimumDiameterMm }: ModelSheet,
  words: ReportWords,
  widthMm: number,
): Strip => {
  const map = lifelineMap({
    ratedLengthM,
    unit: words.unit,
    minimumDiameterMm: lifelineMinimumDiameterMm,
    inspections,
    width: widthMm - 2 * mapSizes.marginMm,
    gap: 1,
    markWidth: mapSizes.markMm,
    measure: labelWidthMm,
    textOfFindings: (findings) => findingsText(findings, words),
    textOfReading: ({ diameterMm }) =>
      words.inLine({
        en: diameterText(diameterMm, words.unit, 'en'),
        es: diameterText(diameterMm, words.unit, 'es'),
      }),
  });
  const rows = map.rows.map((row) => lifelineRow(row, rowHeading(row.inspection, words), map.width));
  return { pieces: [...rows, scalePiece(map, words)], gapMm: 2 };
};

/** Of the widest style in which a label may stand. */
const labelWidthMm = (text: string): number =>
  Math.max(
    ...[textStyles.cell, textStyles.cellHead].map(({ weight, sizeMm }) => textWidthMm(text, weight, sizeMm)),
  ) +
  2 * mapSizes.labelPaddingMm;

const findingsText = (findings: readonly LifelineFinding[], words: ReportWords): string => {
  const [first] = findings;
  const last = findings.at(-1);
  if (first === undefined || last === undefined) return '';
  const placed = (language: Language): string =>
    `${first.label[language]}, ${words.length(first.positionM)[language]}`;
  return findings.length === 1
    ? words.inLine({ en: placed('en'), es: placed('es') })
    : words.line('mapCluster', {
        count: findings.length,
        from: words.length(first.positionM),
        to: words.length(last.positionM),
      });
};

const rowHeading = (
  { on, inspection, verdict, state, findings, readings }: LifelineInspection,
  words: ReportWords,
): string => {
  const end =
    verdict === undefined
      ? words.message(state === 'abandoned' ? 'brokenOff' : 'notAnswered')
      : words.message(`verdict-${verdict}`);
  const row = words.message('mapRow', { date: words.date(on), number: inspection, end });
  if (findings.length + readings.length > 0) return words.inLine(row);
  const nothing = words.message('mapNothing');
  return words.inLine({ en: `${row.en}; ${nothing.en}`, es: `${row.es}; ${nothing.es}` });
};

const scalePiece = ({ ticks, width }: LifelineMap, words: ReportWords): Piece => ({
  heightMm: mapSizes.scaleMm,
  draw: (xMm, yMm) => {
    const leftMm = xMm + mapSizes.marginMm;
    const textIn = (text: string, middleMm: number, topMm: number): PageMark => {
      const wideMm = textWidthMm(text, labelStyle.weight, labelStyle.sizeMm);
      const placeMm = Math.min(Math.max(middleMm - wideMm / 2, leftMm), leftMm + width - wideMm);
      return textAt(text, labelStyle, placeMm, yMm + topMm + mapSizes.baselineMm);
    };
    const tickMarks = ticks.flatMap(({ fraction, value }): readonly PageMark[] => {
      const tickXMm = leftMm + fraction * width;
      const tick: Rectangle = {
        kind: 'rectangle',
        xMm: tickXMm - mapSizes.lineMm / 2,
        yMm,
        widthMm: mapSizes.lineMm,
        heightMm: value === undefined ? 1 : 2,
        colour: 'grey',
        radiusMm: 0,
      };
      if (value === undefined) return [tick];
      const text = value === 0 ? `0 ${words.unit}` : words.inLine(words.number(value));
      return [tick, textIn(text, tickXMm, 2)];
    });
    return [
      ...tickMarks,
      textIn(words.line('mapHook'), leftMm, 5.5),
      textIn(words.line('mapHousing'), leftMm + width, 5.5),
    ];
  },
});
