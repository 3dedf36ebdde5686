/** The status tag with the QR Code and the inspection in a column at the right. */
import type { StatusTag } from '../domain/tag-content.ts';
import { writeTagText } from '../domain/tag-text.ts';
import { sizeForCapHeight } from '../typesetting/paragraph.ts';
import { type DotDensity, dotMm } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots, type SymbolModules } from '../typesetting/symbol.ts';
import type { Arrangement, Face } from './arrange.ts';
import { identityHeadline } from './identity-headline.ts';
import { armsLengthCapMm } from './letter-height.ts';
import { type Stacked, type StackPart, sizeAt, stack } from './stack.ts';
import {
  devicePart,
  duePanel,
  inspectionPart,
  notMarkingPart,
  type PartSpace,
  tagNumberPart,
} from './status-parts.ts';
import { barsBlock, edgeMm, indented, leastBarsBlock, matrixAt, matrixSideMm } from './tag-layout.ts';

const marginXMm = 3;
const marginYMm = 2.5;
const columnGapMm = 1.5;

export const statusWide = (tag: StatusTag, face: Face): Arrangement => ({
  name: 'wide',
  at: (tightness, dropped) => {
    const { dotsPerInch } = face;
    const scale = Math.min(face.widthMm / 100, face.heightMm / 50);
    const qr = encodeSymbol('QR Code', writeTagText(tag));
    const qrDots = moduleDots(
      qr,
      Math.min(24 * scale, face.heightMm - 2 * edgeMm),
      0.52 * scale,
      dotsPerInch,
    );
    if (qrDots === undefined) return { fits: false, missing: 'qrCode' };
    const qrSideMm = matrixSideMm(qr, qrDots, dotsPerInch);
    const quietMm = qr.quietX * qrDots * dotMm(dotsPerInch);
    const rightWidthMm = Math.max(qrSideMm - 2 * quietMm, 24 * scale);
    const rightMm = face.widthMm - marginXMm - rightWidthMm;

    const bars = dropped.has('code128')
      ? undefined
      : sizedBars(tag, rightMm - quietMm - edgeMm, scale, dotsPerInch);
    if (bars === 'too wide') return { fits: false, missing: 'code128' };
    const column = columnUnder(bars, rightMm - quietMm - columnGapMm);

    const left = leftColumn(tag, {
      bars,
      xMm: column.xMm,
      heightMm: face.heightMm - 2 * marginYMm,
      space: { widthMm: column.widthMm, scale, tightness },
    });
    if (!left.fits) return left;
    const qrTopMm = Math.max(edgeMm, marginYMm - quietMm);
    const belowMm = qrTopMm + qrSideMm;
    const right = stack(facts(tag, { widthMm: rightWidthMm, scale, tightness }, !dropped.has('station')), {
      xMm: rightMm,
      yMm: belowMm,
      heightMm: face.heightMm - marginYMm - belowMm,
    });
    if (!right.fits) return right;
    const symbol = matrixAt(qr, qrDots, rightMm - quietMm, qrTopMm, dotsPerInch);
    return { fits: true, primitives: [...left.primitives, symbol, ...right.primitives] };
  },
});

interface SizedBars {
  readonly modules: SymbolModules;
  readonly widthDots: number;
  readonly moduleMm: number;
  readonly dotsPerInch: DotDensity;
}

const sizedBars = (
  tag: StatusTag,
  availableMm: number,
  scale: number,
  dotsPerInch: DotDensity,
): SizedBars | 'too wide' => {
  const modules = encodeSymbol('Code 128', tag.benchId);
  const widthDots = moduleDots(modules, availableMm, 0.45 * scale, dotsPerInch);
  if (widthDots === undefined) return 'too wide';
  return { modules, widthDots, moduleMm: widthDots * dotMm(dotsPerInch), dotsPerInch };
};

/**
 * The column starts where the bars start, and ends with them too where they nearly fill it, so that bench ID, bars and
 * panel share their edges.
 */
const columnUnder = (bars: SizedBars | undefined, rightMm: number) => {
  if (bars === undefined) return { xMm: marginXMm, widthMm: rightMm - marginXMm };
  const xMm = Math.max(marginXMm, edgeMm + bars.modules.quietX * bars.moduleMm);
  const barsMm = bars.modules.columns * bars.moduleMm;
  return {
    xMm,
    widthMm: barsMm > 0.9 * (rightMm - xMm) ? Math.min(barsMm, rightMm - xMm) : rightMm - xMm,
  };
};

interface LeftColumn {
  readonly bars: SizedBars | undefined;
  readonly xMm: number;
  readonly heightMm: number;
  readonly space: PartSpace;
}

const leftColumn = (tag: StatusTag, column: LeftColumn): Stacked => {
  const { bars, space } = column;
  const { scale, tightness, widthMm } = space;
  const identityCapMm = sizeAt(tightness, 7 * scale, Math.max(armsLengthCapMm, 5 * scale));
  return stack(
    [
      {
        part: 'benchId',
        block: identityHeadline(tag.benchId, widthMm, sizeForCapHeight(identityCapMm)),
        gapMm: 0,
      },
      ...(bars === undefined ? [] : [barsPart(bars, scale)]),
      {
        part: 'nextDue',
        block: duePanel(tag, space, { leastMonthCapMm: 5.2 * scale }),
        gapMm: 2 * scale,
        gapShare: 1,
      },
      { part: 'device', block: devicePart(tag, space), gapMm: 1 * scale, gapShare: 1 },
      { part: 'notMarking', block: notMarkingPart(tag, space), gapMm: 0.2, gapShare: 0.5 },
    ],
    { xMm: column.xMm, yMm: marginYMm, heightMm: column.heightMm },
  );
};

const barsPart = (bars: SizedBars, scale: number): StackPart => {
  const { modules, widthDots, moduleMm, dotsPerInch } = bars;
  const leftMm = -modules.quietX * moduleMm;
  return {
    part: 'code128',
    block: indented(leastBarsBlock(modules, widthDots, dotsPerInch), leftMm),
    gapMm: 1.6 * scale,
    grow: {
      share: 0.8,
      mostMm: 14 * scale,
      at: (heightMm) =>
        indented(barsBlock(modules, widthDots, heightMm - 2 * dotMm(dotsPerInch), dotsPerInch), leftMm),
    },
  };
};

const facts = (tag: StatusTag, space: PartSpace, station: boolean): readonly StackPart[] => [
  { part: 'inspection', block: inspectionPart(tag, space), gapMm: 0 },
  { part: 'inspection', block: tagNumberPart(tag, space, station), gapMm: 0.6, gapShare: 1 },
];
