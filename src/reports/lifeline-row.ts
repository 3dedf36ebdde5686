/** One inspection on the map of a lifeline: its heading, the rope, the findings over it and the diameters under it. */
import type { FindingCluster, LifelineMapRow, ReadingMark } from '../domain/lifeline/map.ts';
import type { PlacedLabel } from '../domain/lifeline/place-labels.ts';
import type { Style } from '../typesetting/paragraph.ts';
import { textAt } from '../typesetting/paragraph.ts';
import type { Colour, PageMark } from '../typesetting/primitive.ts';
import { mapSizes } from './lifeline-sizes.ts';
import { heightOf, linesOf, stackedLines } from './lines.ts';
import type { Piece } from './strip.ts';
import { textStyles } from './type-sizes.ts';

const { marginMm, laneMm, ropeMm, stemMm, markMm, dotMm, lineMm, labelPaddingMm } = mapSizes;

export const lifelineRow = (row: LifelineMapRow, heading: string, ropeWidthMm: number): Piece => {
  const { clusters, findingLanes, readings, readingLanes } = row;
  const headingLines = linesOf([{ text: heading, style: textStyles.cellHead }], ropeWidthMm);
  const headingMm = heightOf(headingLines) + mapSizes.headingGapMm;
  const ropeTop = headingMm + findingLanes * laneMm + (findingLanes === 0 ? 1 : stemMm);
  const ropeBottom = ropeTop + ropeMm;
  const labelsUnderMm = readingLanes === 0 ? 0 : stemMm + readingLanes * laneMm;
  const overLane = ({ lane }: PlacedLabel): number => ropeTop - stemMm - (lane + 1) * laneMm;
  const underLane = ({ lane }: PlacedLabel): number => ropeBottom + stemMm + lane * laneMm;
  return {
    heightMm: ropeBottom + labelsUnderMm + mapSizes.rowGapMm,
    draw: (xMm, yMm): readonly PageMark[] => {
      const ink = inkAt(xMm + marginMm, yMm);
      return [
        ...stackedLines(headingLines).draw(xMm + marginMm, yMm),
        ...clusters.map(({ x, label }) => ink.leader(x, ropeTop, label, overLane(label))),
        ...readings.map(({ x, label }) => ink.leader(x, ropeBottom, label, underLane(label))),
        ink.path('grey', `M0 ${ropeTop}h${ropeWidthMm}v${ropeMm}h${-ropeWidthMm}Z`),
        ink.path('pale', `M0 ${ropeTop + lineMm}h${ropeWidthMm}v${ropeMm - 2 * lineMm}h${-ropeWidthMm}Z`),
        ...clusters.flatMap((cluster) => findingMark(cluster, ropeTop + ropeMm / 2, ink)),
        ...readings.map((reading) => readingMark(reading, ropeBottom, ink)),
        ...clusters.flatMap(({ label }) => ink.label(label, overLane(label), textStyles.cell)),
        ...readings.flatMap(({ label, belowMinimum }) =>
          ink.label(label, underLane(label), belowMinimum ? textStyles.cellHead : textStyles.soft),
        ),
      ];
    },
  };
};

type Ink = ReturnType<typeof inkAt>;

const inkAt = (leftMm: number, topMm: number) => {
  const path = (colour: Colour, data: string, strokeUnits?: number): PageMark => ({
    kind: 'path',
    data,
    xMm: leftMm,
    yMm: topMm,
    unitMm: 1,
    colour,
    ...(strokeUnits === undefined ? {} : { strokeUnits }),
  });
  return {
    path,
    /** From a mark to its label, which may stand beside it at the ends of the rope. */
    leader: (x: number, fromMm: number, { left, width }: PlacedLabel, toMm: number): PageMark => {
      const end = Math.min(Math.max(x, left + labelPaddingMm), left + width - labelPaddingMm);
      return path('grey', `M${x} ${fromMm}L${end} ${toMm + laneMm / 2}`, lineMm);
    },
    label: ({ left, width, text }: PlacedLabel, at: number, style: Style): readonly PageMark[] => [
      path('white', `M${left} ${at}h${width}v${laneMm}h${-width}Z`),
      textAt(text, style, leftMm + left + labelPaddingMm, topMm + at + mapSizes.baselineMm),
    ],
  };
};

/** A filled diamond takes the device out of service; an open one was cleaned and looked at again. */
const findingMark = ({ x, findings }: FindingCluster, middleMm: number, ink: Ink): readonly PageMark[] => {
  const half = markMm / 2;
  const diamond = `M${x - half} ${middleMm}l${half} ${-half}l${half} ${half}l${-half} ${half}Z`;
  const removes = findings.some(({ effect }) => effect !== 'clean-and-look-again');
  return [ink.path(removes ? 'black' : 'white', diamond), ink.path('black', diamond, 0.4)];
};

/** A dot, or a triangle that points at the label where the diameter is below the minimum. */
const readingMark = ({ x, belowMinimum }: ReadingMark, topMm: number, ink: Ink): PageMark => {
  const half = dotMm / 2;
  const data = belowMinimum
    ? `M${x - dotMm} ${topMm + 0.2}h${2 * dotMm}l${-dotMm} ${1.5 * dotMm}Z`
    : `M${x - half} ${topMm + 0.9}a${half} ${half} 0 1 0 ${dotMm} 0a${half} ${half} 0 1 0 ${-dotMm} 0Z`;
  return ink.path('black', data);
};
