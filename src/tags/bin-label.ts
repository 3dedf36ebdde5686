/** The layout of the bin label: the place in large words, its code, and the code as symbols. */
import { binSymbolText } from '../domain/bin-symbol.ts';
import type { BinLabel } from '../domain/tag-content.ts';
import {
  type Block,
  headline,
  paragraph,
  type Style,
  sizeForCapHeight,
  sizeForWidth,
} from '../typesetting/paragraph.ts';
import { dotMm } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots } from '../typesetting/symbol.ts';
import { capHeightEm } from '../typesetting/typeface.ts';
import { type Arranged, type Arrangement, arrange, type Face } from './arrange.ts';
import { armsLengthCapMm, smallestSizeMm } from './letter-height.ts';
import { besideMatrix, type SizedMatrix, widthBesideMatrixMm } from './matrix-block.ts';
import { type PartRule, sizeOf } from './part-rule.ts';
import { type StackPart, stack } from './stack.ts';
import {
  barsBlock,
  barsFitAcross,
  edgeMm,
  indented,
  leastBarsBlock,
  pile,
  type Stock,
} from './tag-layout.ts';
import { inEach } from './words.ts';

export const binLabelStock: Stock = { widthMm: 100, heightMm: 50 };

/** The place is read by someone who stands before a shelf, the code at arm's length. */
const binRules = {
  place: { preferredMm: 11, minimumMm: sizeForCapHeight(armsLengthCapMm) },
  code: { preferredMm: sizeForCapHeight(7), minimumMm: sizeForCapHeight(armsLengthCapMm) },
  station: { preferredMm: smallestSizeMm, minimumMm: smallestSizeMm },
} as const satisfies Record<string, PartRule>;

/** Data Matrix always; Code 128 where the stock is wide enough, until room is short; the station's name until then too. */
export const layOutBinLabel = (label: BinLabel, face: Face): Arranged => {
  const beside = binArrangement(label, face, 'compact');
  const under = binArrangement(label, face, 'tall');
  const bars = barsFitAcross(binSymbolText(label.code), face);
  return arrange(face.widthMm > 1.2 * face.heightMm ? [beside, under] : [under, beside], {
    tooWide: bars ? [] : ['code128'],
    inTurn: bars ? ['station', 'code128'] : ['station'],
  });
};

/** `compact`: the Data Matrix beside the place; `tall`: beside the code, under the place. */
const binArrangement = (label: BinLabel, face: Face, name: 'compact' | 'tall'): Arrangement => ({
  name,
  at: (tightness, dropped) => {
    const marginMm = Math.min(2.5, 0.05 * Math.min(face.widthMm, 2 * face.heightMm));
    const scale =
      name === 'compact'
        ? Math.min(face.widthMm / 100, face.heightMm / 50)
        : Math.min(face.widthMm / 60, face.heightMm / 80);
    const matrix = matrixIn(label, face, name === 'compact' ? 0.36 : 0.45, scale);
    if (matrix === undefined) return { fits: false, missing: 'dataMatrix' };
    const bars = dropped.has('code128') ? undefined : barsIn(label, face, scale);
    const xMm = Math.max(marginMm, bars?.indentMm ?? 0);
    const space = { widthMm: face.widthMm - xMm - marginMm, besideMm: marginMm - edgeMm };
    const textMm = widthBesideMatrixMm(matrix, space) - 1.5 * Math.max(0.6, scale);
    const codeMm = sizeOf(binRules.code, scale, tightness);
    const placeMm = sizeOf(binRules.place, scale, tightness);
    const station = dropped.has('station') ? [] : [stationPart(label, space.widthMm, scale, tightness)];
    const parts =
      name === 'compact'
        ? compactParts({
            place: placeBlock(label, textMm, placeMm),
            withMatrix: (left) => besideMatrix(left, matrix, space, 'middle'),
            codeBeside:
              bars && codeBlock(label, space.widthMm - bars.widthMm - 2 * Math.max(1, scale), codeMm),
            codeUnder: codeBlock(label, textMm, codeMm),
            bars,
          })
        : tallParts({
            place: placeBlock(label, space.widthMm, placeMm),
            code: codeBlock(label, textMm, codeMm),
            withMatrix: (left) => besideMatrix(left, matrix, space, 'middle'),
            bars,
          });
    return stack([...parts, ...station], { xMm, yMm: marginMm, heightMm: face.heightMm - 2 * marginMm });
  },
});

interface CompactBlocks {
  readonly place: Block | undefined;
  readonly withMatrix: (left: Block) => Block;
  readonly codeBeside: Block | undefined;
  readonly codeUnder: Block | undefined;
  readonly bars: BarsIn | undefined;
}

/** The code stands to the right of its bars, or under the place where there is no room for it there. */
const compactParts = (blocks: CompactBlocks): readonly StackPart[] => {
  const { place, withMatrix, codeBeside, codeUnder, bars } = blocks;
  if (place === undefined) return [{ part: 'place', block: undefined, gapMm: 0 }];
  if (bars !== undefined && codeBeside !== undefined)
    return [
      { part: 'place', block: withMatrix(place), gapMm: 0 },
      { ...bars.part((block) => besideCentred(block, codeBeside, bars.widthMm)), gapMm: 1, gapShare: 1 },
    ];
  if (codeUnder === undefined) return [{ part: 'binCode', block: undefined, gapMm: 0 }];
  return [
    { part: 'place', block: withMatrix(pile([place, codeUnder], 1)), gapMm: 0 },
    ...(bars === undefined ? [] : [bars.part((block) => block)]),
  ];
};

const besideCentred = (left: Block, right: Block, rightXMm: number): Block => {
  const heightMm = Math.max(left.heightMm, right.heightMm);
  return {
    heightMm,
    draw: (xMm, yMm) => [
      ...left.draw(xMm, yMm + (heightMm - left.heightMm) / 2),
      ...right.draw(xMm + rightXMm, yMm + (heightMm - right.heightMm) / 2),
    ],
  };
};

const tallParts = (
  blocks: Pick<CompactBlocks, 'place' | 'withMatrix' | 'bars'> & { readonly code: Block | undefined },
): readonly StackPart[] => [
  { part: 'place', block: blocks.place, gapMm: 0, claim: 1 },
  {
    part: 'binCode',
    block: blocks.code && blocks.withMatrix(blocks.code),
    gapMm: 1,
    gapShare: 1,
  },
  ...(blocks.bars === undefined ? [] : [blocks.bars.part((block) => block)]),
];

/** Smaller by up to a third where that saves a line. */
const placeBlock = (label: BinLabel, widthMm: number, preferredMm: number): Block | undefined => {
  const texts = inEach(label.place, label.languages).map((text, index) => ({
    text,
    weight: index === 0 ? ('bold' as const) : ('regular' as const),
  }));
  const oneLineMm = Math.min(
    ...texts.map(({ text, weight }) => sizeForWidth(text, weight, widthMm - 0.01, preferredMm)),
  );
  const saves = oneLineMm >= Math.max(binRules.place.minimumMm, (preferredMm * 2) / 3);
  const sizeMm = saves ? oneLineMm : preferredMm;
  return paragraph(
    texts.map(({ text, weight }) => ({ text, style: { role: 'place', weight, sizeMm } })),
    widthMm,
    false,
  );
};

const codeBlock = (label: BinLabel, widthMm: number, preferredMm: number): Block | undefined => {
  const sizeMm = sizeForWidth(label.code, 'bold', widthMm, preferredMm);
  if (sizeMm * capHeightEm < armsLengthCapMm - 1e-9) return undefined;
  return headline(label.code, { role: 'bin code', weight: 'bold', sizeMm });
};

const stationPart = (label: BinLabel, widthMm: number, scale: number, tightness: number): StackPart => {
  const style: Style = {
    role: 'label',
    weight: 'regular',
    sizeMm: sizeOf(binRules.station, scale, tightness),
  };
  return {
    part: 'station',
    block: paragraph([{ text: label.station, style }], widthMm, tightness === 1),
    gapMm: 0.6,
    gapShare: 0.5,
    claim: 2,
  };
};

const matrixIn = (label: BinLabel, face: Face, share: number, scale: number): SizedMatrix | undefined => {
  const { dotsPerInch } = face;
  const modules = encodeSymbol('Data Matrix', binSymbolText(label.code));
  const mostMm = Math.min(face.widthMm * share, face.heightMm * 0.55);
  const widthDots = moduleDots(modules, mostMm, 2 * scale, dotsPerInch);
  return widthDots === undefined ? undefined : { modules, widthDots, dotsPerInch };
};

interface BarsIn {
  /** The bars, or the row that they stand in. */
  readonly part: (rowOf: (bars: Block) => Block) => StackPart;
  /** From the edge of the stock to the first bar. */
  readonly indentMm: number;
  /** From the first bar to the end of the quiet zone at the right, and one dot for the snapping to the grid. */
  readonly widthMm: number;
}

const barsIn = (label: BinLabel, face: Face, scale: number): BarsIn | undefined => {
  const { dotsPerInch } = face;
  const modules = encodeSymbol('Code 128', binSymbolText(label.code));
  const widthDots = moduleDots(modules, face.widthMm - 2 * edgeMm, 0.5 * scale, dotsPerInch);
  if (widthDots === undefined) return undefined;
  const moduleMm = widthDots * dotMm(dotsPerInch);
  const quietMm = modules.quietX * moduleMm;
  return {
    indentMm: edgeMm + quietMm,
    widthMm: modules.columns * moduleMm + quietMm + dotMm(dotsPerInch),
    part: (rowOf) => ({
      part: 'code128',
      block: rowOf(indented(leastBarsBlock(modules, widthDots, dotsPerInch), -quietMm)),
      gapMm: 1,
      gapShare: 1,
      grow: {
        share: 0.5,
        mostMm: 14 * scale,
        at: (heightMm) =>
          rowOf(
            indented(barsBlock(modules, widthDots, heightMm - 2 * dotMm(dotsPerInch), dotsPerInch), -quietMm),
          ),
      },
    }),
  };
};
