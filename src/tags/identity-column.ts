/** Which device a tag hangs on, in a narrow column: bench ID, bars, and the device beside the QR Code. */
import type { QuarantineTag } from '../domain/tag-content.ts';
import { writeTagText } from '../domain/tag-text.ts';
import { type Block, paragraph, sizeForCapHeight } from '../typesetting/paragraph.ts';
import { type DotDensity, dotMm } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots } from '../typesetting/symbol.ts';
import { deviceLines } from './identity-block.ts';
import { identityHeadline } from './identity-headline.ts';
import { besideMatrix, type SizedMatrix, widthBesideMatrixMm } from './matrix-block.ts';
import { sizeAt } from './stack.ts';
import { indented, leastBarsBlock, pile } from './tag-layout.ts';
import type { TagPart } from './words.ts';

export interface IdentityColumnSpace {
  readonly widthMm: number;
  /** White that a quiet zone may use to the left of the column and to its right. */
  readonly besideMm: number;
  readonly scale: number;
  readonly tightness: number;
  readonly dotsPerInch: DotDensity;
  /** Whether Code 128 stands on the tag. */
  readonly bars: boolean;
}

export type IdentityColumn =
  | { readonly fits: true; readonly block: Block }
  | { readonly fits: false; readonly missing: TagPart };

export const identityColumn = (tag: QuarantineTag, space: IdentityColumnSpace): IdentityColumn => {
  const { widthMm, besideMm, scale, tightness } = space;
  const qr = qrIn(tag, space);
  if (qr === undefined) return { fits: false, missing: 'qrCode' };
  const bars = barsIn(tag, space);
  if (bars === 'too wide') return { fits: false, missing: 'code128' };
  const innerMm = widthMm - (bars?.indentMm ?? 0);
  const benchId = identityHeadline(
    tag.benchId,
    bars?.widthMm ?? widthMm,
    sizeForCapHeight(7 * symbolScale(space)),
  );
  if (benchId === undefined) return { fits: false, missing: 'benchId' };
  const textMm = widthBesideMatrixMm(qr, { widthMm: innerMm, besideMm }) - 1;
  const device = paragraph(deviceLines(tag, scale, tightness), textMm, tightness === 1);
  if (device === undefined) return { fits: false, missing: 'device' };
  const column = pile(
    [
      benchId,
      ...(bars === undefined ? [] : [bars.block]),
      besideMatrix(device, qr, { widthMm: innerMm, besideMm }, 'middle'),
    ],
    1.4 * scale,
  );
  return { fits: true, block: indented(column, bars?.indentMm ?? 0) };
};

/** Symbols and bench ID give way to the words by up to two fifths. */
const symbolScale = ({ scale, tightness }: IdentityColumnSpace): number => scale * sizeAt(tightness, 1, 0.6);

const qrIn = (tag: QuarantineTag, space: IdentityColumnSpace): SizedMatrix | undefined => {
  const { dotsPerInch } = space;
  const modules = encodeSymbol('QR Code', writeTagText(tag));
  const widthDots = moduleDots(modules, space.widthMm * 0.6, 0.55 * symbolScale(space), dotsPerInch);
  return widthDots === undefined ? undefined : { modules, widthDots, dotsPerInch };
};

interface BarsIn {
  /** Without the quiet zones. */
  readonly widthMm: number;
  readonly indentMm: number;
  readonly block: Block;
}

const barsIn = (tag: QuarantineTag, space: IdentityColumnSpace): BarsIn | undefined | 'too wide' => {
  if (!space.bars) return undefined;
  const { widthMm, besideMm, dotsPerInch } = space;
  const modules = encodeSymbol('Code 128', tag.benchId);
  const widthDots = moduleDots(modules, widthMm + 2 * besideMm, 0.45 * symbolScale(space), dotsPerInch);
  if (widthDots === undefined) return 'too wide';
  const moduleMm = widthDots * dotMm(dotsPerInch);
  const quietMm = modules.quietX * moduleMm;
  return {
    widthMm: modules.columns * moduleMm,
    indentMm: Math.max(0, quietMm - besideMm),
    block: indented(leastBarsBlock(modules, widthDots, dotsPerInch), -quietMm),
  };
};
