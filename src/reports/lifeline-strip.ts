/** The map of a lifeline on paper: every inspection a length of rope, to scale, findings over it and diameters under it. */
import { diameterText } from '../domain/length.ts';
import type { LifelineFinding, LifelineInspection } from '../domain/lifeline/lifeline-inspection.ts';
import { type LifelineMap, type LifelineMapRow, lifelineMap } from '../domain/lifeline/map.ts';
import type { PlacedLabel } from '../domain/lifeline/place-labels.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import { textAt } from '../typesetting/paragraph.ts';
import type { Colour, PageMark, Rectangle } from '../typesetting/primitive.ts';
import { textWidthMm } from '../typesetting/typeface.ts';
import type { ReportWords } from './report-words.ts';
import type { Piece, Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

/** Room beside the rope, so that a mark at its end stays on the page. */
const marginMm = 2;
const headingMm = 5.2;
const laneMm = 4;
const ropeMm = 2.2;
const markMm = 1.6;
const tickMm = 2.4;
const rowGapMm = 3;
const scaleMm = 7;
const baselineMm = 3;

const labelStyle = textStyles.soft;

/** `inspections`: the one that the report is about first, then earlier ones; there is at least one. */
export const lifelineStrip = (
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
    width: widthMm - 2 * marginMm,
    gap: 2,
    markWidth: markMm,
    measure: (text) => textWidthMm(text, labelStyle.weight, labelStyle.sizeMm),
    textOfFindings: (findings) => findingsText(findings, words),
    textOfReading: ({ diameterMm }) =>
      words.inLine({ en: diameterText(diameterMm, 'en'), es: diameterText(diameterMm, 'es') }),
  });
  return {
    pieces: [...map.rows.map((row) => rowPiece(row, map.width, words)), scalePiece(map, words)],
    gapMm: 2,
  };
};

const findingsText = (findings: readonly LifelineFinding[], words: ReportWords): string => {
  const [first] = findings;
  const last = findings.at(-1);
  if (first === undefined || last === undefined) return '';
  return findings.length === 1
    ? `${words.inLine(first.label)}, ${words.inLine(words.length(first.positionM))}`
    : words.line('mapCluster', {
        count: findings.length,
        from: words.length(first.positionM),
        to: words.length(last.positionM),
      });
};

const rowPiece = (row: LifelineMapRow, ropeWidthMm: number, words: ReportWords): Piece => {
  const { inspection, clusters, findingLanes, readings, readingLanes } = row;
  const ropeTop = headingMm + findingLanes * laneMm + 1;
  const readingsTop = ropeTop + ropeMm + tickMm;
  const isBare = clusters.length === 0 && readings.length === 0;
  return {
    heightMm: (readings.length === 0 ? ropeTop + ropeMm : readingsTop + readingLanes * laneMm) + rowGapMm,
    draw: (xMm, yMm): readonly PageMark[] => {
      const leftMm = xMm + marginMm;
      const label = ({ left, text }: PlacedLabel, topMm: number): PageMark =>
        textAt(text, labelStyle, leftMm + left, yMm + topMm + baselineMm);
      const bar = (
        centre: number,
        topMm: number,
        wideMm: number,
        highMm: number,
        colour: Colour,
      ): Rectangle => ({
        kind: 'rectangle',
        xMm: leftMm + centre - wideMm / 2,
        yMm: yMm + topMm,
        widthMm: wideMm,
        heightMm: highMm,
        colour,
        radiusMm: 0,
      });
      const heading = `${rowHeading(inspection, words)}${isBare ? `: ${words.line('mapNothing')}` : ''}`;
      return [
        textAt(heading, textStyles.cellHead, leftMm, yMm + baselineMm),
        bar(ropeWidthMm / 2, ropeTop, ropeWidthMm, ropeMm, 'pale'),
        bar(ropeWidthMm / 2, ropeTop, ropeWidthMm, 0.25, 'grey'),
        bar(ropeWidthMm / 2, ropeTop + ropeMm - 0.25, ropeWidthMm, 0.25, 'grey'),
        ...clusters.flatMap(({ x, label: placed }) => [
          bar(x, ropeTop - 1, markMm, ropeMm + 2, 'black'),
          label(placed, headingMm + (findingLanes - 1 - placed.lane) * laneMm),
        ]),
        ...readings.flatMap(({ x, belowMinimum, label: placed }) => [
          bar(x, ropeTop, belowMinimum ? 1 : 0.4, ropeMm + tickMm, 'black'),
          label(placed, readingsTop + placed.lane * laneMm),
        ]),
      ];
    },
  };
};

const rowHeading = ({ on, inspection, verdict, state }: LifelineInspection, words: ReportWords): string =>
  words.line('mapRow', {
    date: words.date(on),
    number: inspection,
    end:
      verdict === undefined
        ? words.message(state === 'abandoned' ? 'brokenOff' : 'notAnswered')
        : words.message(`verdict-${verdict}`),
  });

const scalePiece = ({ ticks, width }: LifelineMap, words: ReportWords): Piece => ({
  heightMm: scaleMm,
  draw: (xMm, yMm) =>
    ticks.flatMap(({ fraction, value }): readonly PageMark[] => {
      const tickXMm = xMm + marginMm + fraction * width;
      const tick: Rectangle = {
        kind: 'rectangle',
        xMm: tickXMm - 0.125,
        yMm,
        widthMm: 0.25,
        heightMm: value === undefined ? 1 : 2,
        colour: 'grey',
        radiusMm: 0,
      };
      if (value === undefined) return [tick];
      const text = value === 0 ? `0 ${words.unit}` : words.inLine(words.number(value));
      const wideMm = textWidthMm(text, labelStyle.weight, labelStyle.sizeMm);
      const leftMm = Math.min(Math.max(tickXMm - wideMm / 2, xMm), xMm + 2 * marginMm + width - wideMm);
      return [tick, textAt(text, labelStyle, leftMm, yMm + 2 + baselineMm)];
    }),
});
