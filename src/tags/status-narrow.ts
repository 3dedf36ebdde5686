/** The status tag in one column, on portrait stock and on small stock, with the QR Code beside the words. */
import type { StatusTag } from '../domain/tag-content.ts';
import { writeTagText } from '../domain/tag-text.ts';
import type { Block } from '../typesetting/paragraph.ts';
import { dotMm } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots } from '../typesetting/symbol.ts';
import type { Arrangement, Face } from './arrange.ts';
import { identityHeadline } from './identity-headline.ts';
import { besideMatrix, type SizedMatrix, widthBesideMatrixMm } from './matrix-block.ts';
import { sizeOf } from './part-rule.ts';
import { type StackPart, sizeAt, stack } from './stack.ts';
import {
  devicePart,
  deviceRunning,
  duePanel,
  inspectionPart,
  inspectionRunning,
  notMarkingPart,
  type PartSpace,
  statusRules,
  tagNumberPart,
} from './status-parts.ts';
import { barsBlock, edgeMm, indented, leastBarsBlock, pile } from './tag-layout.ts';

/** White between words and the quiet zone of the QR Code. */
const besideGapMm = 0.8;

interface Column {
  readonly face: Face;
  readonly xMm: number;
  readonly yMm: number;
  readonly space: PartSpace;
  readonly qr: SizedMatrix;
  /** `undefined` where the stock is too narrow for them. */
  readonly bars: StackPart | undefined;
}

/** Bench ID, bars and due panel over the full width; the inspection beside the QR Code under them. */
export const statusTall = (tag: StatusTag, face: Face): Arrangement => ({
  name: 'tall',
  at: (tightness, dropped) => {
    const scale = Math.min(face.widthMm / 58, face.heightMm / 90);
    const column = columnOf(tag, face, { scale, tightness, marginMm: Math.min(3, face.widthMm * 0.05) });
    if (column === undefined) return { fits: false, missing: 'qrCode' };
    const { space, qr } = column;
    const besideMm = column.xMm - edgeMm;
    const textMm = widthBesideMatrixMm(qr, { widthMm: space.widthMm, besideMm }) - besideGapMm;
    const facts = pileOf(
      [
        inspectionPart(tag, { ...space, widthMm: textMm }),
        tagNumberPart(tag, { ...space, widthMm: textMm }, !dropped.has('station')),
      ],
      1.2 * scale,
    );
    return stack(
      [
        { part: 'benchId', block: identity(tag, space), gapMm: 0 },
        ...barsUnless(dropped.has('code128'), column),
        {
          part: 'nextDue',
          block: duePanel(tag, space, { under: face.widthMm < 0.75 * face.heightMm }),
          gapMm: 1.6 * scale,
          gapShare: 1,
        },
        {
          part: 'inspection',
          block: facts && besideMatrix(facts, qr, { widthMm: space.widthMm, besideMm }, 'middle'),
          gapMm: 0.8 * scale,
          gapShare: 1,
        },
        { part: 'device', block: devicePart(tag, space), gapMm: 0.8 * scale, gapShare: 1 },
        { part: 'notMarking', block: notMarkingPart(tag, space), gapMm: 0.3, gapShare: 0.6 },
      ],
      { xMm: column.xMm, yMm: column.yMm, heightMm: face.heightMm - 2 * column.yMm },
    );
  },
});

/** Bench ID and due panel beside the QR Code, the bars under them, everything else in running lines. */
export const statusCompact = (tag: StatusTag, face: Face): Arrangement => ({
  name: 'compact',
  at: (tightness, dropped) => {
    const scale = Math.min(face.widthMm / 75, face.heightMm / 55);
    const column = columnOf(tag, face, { scale, tightness, marginMm: 1.6 });
    if (column === undefined) return { fits: false, missing: 'qrCode' };
    const { space, qr } = column;
    const besideMm = column.xMm - edgeMm;
    const leftMm = widthBesideMatrixMm(qr, { widthMm: space.widthMm, besideMm }) - besideGapMm;
    const left = { ...space, widthMm: leftMm };
    const benchId = identity(tag, left);
    const due = duePanel(tag, left);
    const head = pileOf([benchId, due], 1.4 * scale);
    const withQr = head && besideMatrix(head, qr, { widthMm: space.widthMm, besideMm }, 'middle');
    return stack(
      [
        { part: benchId === undefined ? 'benchId' : 'nextDue', block: withQr, gapMm: 0, claim: 0 },
        ...barsUnless(dropped.has('code128'), column),
        {
          part: 'inspection',
          block: inspectionRunning(tag, space),
          gapMm: 0.8 * scale,
          gapShare: 1,
        },
        {
          part: 'device',
          block: deviceRunning(tag, space, !dropped.has('station')),
          gapMm: 0.3,
          gapShare: 1,
        },
        { part: 'notMarking', block: notMarkingPart(tag, space), gapMm: 0.3, gapShare: 1 },
      ],
      { xMm: column.xMm, yMm: column.yMm, heightMm: face.heightMm - 2 * column.yMm },
    );
  },
});

/** The blocks one under the other, or `undefined` where one of them has no answer. */
const pileOf = (blocks: readonly (Block | undefined)[], gapMm: number): Block | undefined => {
  const known = blocks.filter((block) => block !== undefined);
  return known.length === blocks.length ? pile(known, gapMm) : undefined;
};

const identity = (tag: StatusTag, { widthMm, scale, tightness }: PartSpace): Block | undefined =>
  identityHeadline(tag.benchId, widthMm, sizeOf(statusRules.benchId, scale, tightness));

const barsUnless = (dropped: boolean, { bars }: Column): readonly StackPart[] =>
  dropped ? [] : [bars ?? { part: 'code128', block: undefined, gapMm: 0 }];

const columnOf = (
  tag: StatusTag,
  face: Face,
  size: { readonly scale: number; readonly tightness: number; readonly marginMm: number },
): Column | undefined => {
  const { scale, tightness, marginMm } = size;
  const { dotsPerInch } = face;
  /** Symbols give way to the words by up to two fifths. */
  const symbolScale = scale * sizeAt(tightness, 1, 0.6);
  const modules = encodeSymbol('QR Code', writeTagText(tag));
  const widthDots = moduleDots(
    modules,
    Math.min(face.widthMm * 0.55, face.heightMm - 2 * edgeMm),
    0.58 * symbolScale,
    dotsPerInch,
  );
  if (widthDots === undefined) return undefined;
  const bars = encodeSymbol('Code 128', tag.benchId);
  const barDots = moduleDots(bars, face.widthMm - 2 * edgeMm, 0.45 * symbolScale, dotsPerInch);
  const quietMm = barDots === undefined ? 0 : bars.quietX * barDots * dotMm(dotsPerInch);
  const xMm = barDots === undefined ? marginMm : Math.max(marginMm, edgeMm + quietMm);
  return {
    face,
    xMm,
    yMm: Math.min(2.5, marginMm),
    space: { widthMm: face.widthMm - 2 * xMm, scale, tightness },
    qr: { modules, widthDots, dotsPerInch },
    bars:
      barDots === undefined
        ? undefined
        : {
            part: 'code128',
            block: indented(leastBarsBlock(bars, barDots, dotsPerInch), -quietMm),
            gapMm: 1.2 * scale,
            gapShare: 0.4,
            grow: {
              share: 0.35,
              mostMm: 14 * scale,
              at: (heightMm) =>
                indented(barsBlock(bars, barDots, heightMm - 2 * dotMm(dotsPerInch), dotsPerInch), -quietMm),
            },
          },
  };
};
