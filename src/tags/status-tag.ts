/** The layout of the status tag: the bench ID and the month of the next inspection first, all else around them. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { StatusTag } from '../domain/tag-content.ts';
import { writeTagText } from '../domain/tag-text.ts';
import { armsLengthCapMm, smallestSizeMm } from './letter-height.ts';
import { type Block, headline, paragraph, sizeForCapHeight, sizeForWidth, textAt } from './paragraph.ts';
import { type DotDensity, dotMm } from './primitive.ts';
import { atLargestSizes, type Stacked, sizeAt, stack } from './stack.ts';
import { encodeSymbol, moduleDots, type SymbolModules } from './symbol.ts';
import { dateText, monthText } from './tag-date.ts';
import {
  barsBlock,
  edgeMm,
  indented,
  type LaidOut,
  leastBarsBlock,
  matrixAt,
  matrixSideMm,
  misfit,
  onPanel,
  pile,
  type Stock,
} from './tag-layout.ts';
import { capHeightEm, textWidthMm } from './typeface.ts';
import { inEach, inOneLine, word } from './words.ts';

export const statusTagStock: Stock = { widthMm: 100, heightMm: 50 };

const marginXMm = 3;
const marginYMm = 2.5;
const columnGapMm = 1.5;

export const layOutStatusTag = (tag: StatusTag, stock: Stock, dotsPerInch: DotDensity): LaidOut => {
  const scale = Math.min(stock.widthMm / statusTagStock.widthMm, stock.heightMm / statusTagStock.heightMm);
  const qr = encodeSymbol('QR Code', writeTagText(tag));
  const qrDots = moduleDots(qr, Math.min(24 * scale, stock.heightMm - 2 * edgeMm), 0.52 * scale, dotsPerInch);
  if (qrDots === undefined) return misfit('qrCode');
  const qrSideMm = matrixSideMm(qr, qrDots, dotsPerInch);
  const quietMm = qr.quietX * qrDots * dotMm(dotsPerInch);
  const rightWidthMm = Math.max(qrSideMm - 2 * quietMm, 24 * scale);
  const rightMm = stock.widthMm - marginXMm - rightWidthMm;

  const bars = encodeSymbol('Code 128', tag.benchId);
  const barDots = moduleDots(bars, rightMm - quietMm - edgeMm, 0.45 * scale, dotsPerInch);
  if (barDots === undefined) return misfit('code128');
  const column = columnUnder(bars, barDots * dotMm(dotsPerInch), rightMm - quietMm - columnGapMm);

  const heightMm = stock.heightMm - 2 * marginYMm;
  const stacked = atLargestSizes((tightness) => {
    const left = leftColumn(tag, {
      bars,
      barDots,
      dotsPerInch,
      ...column,
      heightMm,
      scale,
      tightness,
    });
    if (!left.fits) return left;
    const qrTopMm = Math.max(edgeMm, marginYMm - quietMm);
    const belowMm = qrTopMm + qrSideMm;
    const right = rightColumn(tag, {
      xMm: rightMm,
      yMm: belowMm,
      widthMm: rightWidthMm,
      heightMm: stock.heightMm - marginYMm - belowMm,
      scale,
      tightness,
    });
    if (!right.fits) return right;
    const qrLeftMm = rightMm - quietMm;
    const symbol = matrixAt(qr, qrDots, qrLeftMm, qrTopMm, dotsPerInch);
    return {
      fits: true,
      primitives: [...left.primitives, symbol, ...right.primitives],
    };
  });
  if (!stacked.fits) return misfit(stacked.missing);
  return {
    fits: true,
    layout: { ...stock, dotsPerInch, primitives: stacked.primitives },
  };
};

interface LeftColumn {
  readonly bars: SymbolModules;
  readonly barDots: number;
  readonly dotsPerInch: DotDensity;
  readonly xMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly scale: number;
  readonly tightness: number;
}

/**
 * The column starts where the bars start, and ends with them too where they nearly fill it, so that bench ID, bars and
 * panel share their edges.
 */
const columnUnder = (bars: SymbolModules, moduleMm: number, rightMm: number) => {
  const xMm = Math.max(marginXMm, edgeMm + bars.quietX * moduleMm);
  const barsMm = bars.columns * moduleMm;
  return {
    xMm,
    widthMm: barsMm > 0.9 * (rightMm - xMm) ? Math.min(barsMm, rightMm - xMm) : rightMm - xMm,
  };
};

const leftColumn = (tag: StatusTag, column: LeftColumn): Stacked => {
  const { bars, barDots, dotsPerInch, widthMm, scale, tightness } = column;
  const breakWords = tightness === 1;
  const barsLeftMm = -bars.quietX * barDots * dotMm(dotsPerInch);
  const detailMm = sizeAt(tightness, 2.9 * scale, smallestSizeMm);
  const identity = formatBenchId(tag.benchId);
  const identityCapMm = sizeAt(tightness, 7 * scale, Math.max(armsLengthCapMm, 5 * scale));
  const identityMm = sizeForWidth(identity, 'bold', widthMm, sizeForCapHeight(identityCapMm));
  const fittingIdentity = identityMm * capHeightEm >= armsLengthCapMm;
  return stack(
    [
      {
        part: 'benchId',
        block: fittingIdentity
          ? headline(identity, {
              role: 'bench ID',
              weight: 'bold',
              sizeMm: identityMm,
            })
          : undefined,
        gapMm: 0,
      },
      {
        part: 'code128',
        block: indented(leastBarsBlock(bars, barDots, dotsPerInch), barsLeftMm),
        gapMm: 1.6 * scale,
        grow: {
          share: 0.8,
          mostMm: 14 * scale,
          at: (heightMm) =>
            indented(barsBlock(bars, barDots, heightMm - 2 * dotMm(dotsPerInch), dotsPerInch), barsLeftMm),
        },
      },
      {
        part: 'nextDue',
        block: duePanel(tag, widthMm, scale, tightness),
        gapMm: 2 * scale,
        gapShare: 1,
      },
      {
        part: 'device',
        block: paragraph(
          [
            {
              text: `${tag.manufacturer} ${tag.model} · ${tag.ratedLength}`,
              style: { role: 'detail', weight: 'bold', sizeMm: detailMm },
            },
            {
              text: `${inOneLine(word('serial'), tag.languages)} ${tag.serial}`,
              style: { role: 'detail', weight: 'regular', sizeMm: detailMm },
            },
          ],
          widthMm,
          breakWords,
        ),
        gapMm: 1 * scale,
        gapShare: 1,
      },
      {
        part: 'notMarking',
        block: paragraph(
          inEach(word('notMarking'), tag.languages).map((text) => ({
            text,
            style: {
              role: 'detail',
              weight: 'regular',
              sizeMm: smallestSizeMm,
            },
          })),
          widthMm,
          breakWords,
        ),
        gapMm: 0.2,
        gapShare: 0.5,
      },
    ],
    { xMm: column.xMm, yMm: marginYMm, heightMm: column.heightMm },
  );
};

/** White on black: the month large, the full date beside it, or under it where the line would be too long. */
const duePanel = (tag: StatusTag, widthMm: number, scale: number, tightness: number): Block | undefined => {
  const paddingMm = 2.2 * scale;
  const innerMm = widthMm - 2 * paddingMm;
  const heading = inEach(word('nextDue'), tag.languages).join(' · ');
  const preferredLabelMm = sizeAt(tightness, 2.8 * scale, smallestSizeMm);
  const labelMm = Math.max(smallestSizeMm, sizeForWidth(heading, 'bold', innerMm - 0.01, preferredLabelMm));
  const label = paragraph(
    [
      {
        text: heading,
        style: {
          role: 'label',
          weight: 'bold',
          sizeMm: labelMm,
          colour: 'white',
        },
      },
    ],
    innerMm,
    false,
  );
  const month = monthText(tag.dueOn, tag.languages);
  const date = dateText(tag.dueOn, tag.languages);
  const dateMm = sizeAt(tightness, 3.3 * scale, smallestSizeMm);
  const gapMm = 3 * scale;
  const preferredMm = sizeForCapHeight(sizeAt(tightness, 9 * scale, Math.max(armsLengthCapMm, 5.2 * scale)));
  const monthMm = sizeForWidth(
    month,
    'bold',
    innerMm - gapMm - textWidthMm(date, 'regular', dateMm),
    preferredMm,
  );
  if (label === undefined || monthMm * capHeightEm < armsLengthCapMm) return undefined;
  const line: Block = {
    heightMm: monthMm * capHeightEm,
    draw: (xMm, yMm) => {
      const baselineMm = yMm + monthMm * capHeightEm;
      const dateX = xMm + innerMm - textWidthMm(date, 'regular', dateMm);
      return [
        textAt(
          month,
          {
            role: 'due month',
            weight: 'bold',
            sizeMm: monthMm,
            colour: 'white',
          },
          xMm,
          baselineMm,
        ),
        textAt(
          date,
          {
            role: 'detail',
            weight: 'regular',
            sizeMm: dateMm,
            colour: 'white',
          },
          dateX,
          baselineMm,
        ),
      ];
    },
  };
  return onPanel(
    pile([label, line], 0.8 * scale),
    widthMm,
    paddingMm,
    sizeAt(tightness, 1.6, 1.2) * scale,
    'black',
    1.2 * scale,
  );
};

interface RightColumn {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly scale: number;
  readonly tightness: number;
}

const rightColumn = (tag: StatusTag, column: RightColumn): Stacked => {
  const { widthMm, scale, tightness } = column;
  const breakWords = tightness === 1;
  const labelMm = smallestSizeMm;
  const valueMm = sizeAt(tightness, 3.2 * scale, smallestSizeMm);
  const label = (text: string) =>
    ({
      text,
      style: { role: 'label', weight: 'regular', sizeMm: labelMm },
    }) as const;
  const value = (text: string) =>
    ({
      text,
      style: { role: 'detail', weight: 'bold', sizeMm: valueMm },
    }) as const;
  return stack(
    [
      {
        part: 'inspection',
        block: paragraph(
          [
            ...inEach(word('inspected'), tag.languages).map(label),
            value(dateText(tag.inspectedOn, tag.languages)),
            value(tag.inspectorMark),
          ],
          widthMm,
          breakWords,
        ),
        gapMm: 0,
      },
      {
        part: 'inspection',
        block: paragraph(
          [value(`${inOneLine(word('tag'), tag.languages)} ${tag.tagNumber}`), label(tag.station)],
          widthMm,
          breakWords,
        ),
        gapMm: 0.6,
        gapShare: 1,
      },
    ],
    { xMm: column.xMm, yMm: column.yMm, heightMm: column.heightMm },
  );
};
