/** The foot of a tag that says which device it hangs on: bench ID, Code 128 and device at the left, QR at the right. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { QuarantineTag, StatusTag } from '../domain/tag-content.ts';
import { armsLengthCapMm, smallestSizeMm } from './letter-height.ts';
import { type Block, headline, paragraph, sizeForCapHeight, sizeForWidth } from './paragraph.ts';
import { type DotDensity, dotMm } from './primitive.ts';
import { sizeAt } from './stack.ts';
import { encodeSymbol, moduleDots } from './symbol.ts';
import { indented, leastBarsBlock, matrixAt, matrixSideMm, pile } from './tag-layout.ts';
import { capHeightEm } from './typeface.ts';
import { inOneLine, type TagPart, word } from './words.ts';

export interface IdentitySpace {
  readonly widthMm: number;
  readonly scale: number;
  readonly dotsPerInch: DotDensity;
  /** White that a quiet zone may use to the left of the block and to its right. */
  readonly besideMm: number;
}

export type Identity =
  | { readonly fits: false; readonly missing: TagPart }
  /** `missing` is what to name where `at` has no answer. */
  | {
      readonly fits: true;
      readonly missing: TagPart;
      readonly at: (tightness: number) => Block | undefined;
    };

const gapMm = 1;

export const identityBlock = (
  tag: StatusTag | QuarantineTag,
  qrText: string,
  space: IdentitySpace,
): Identity => {
  const { widthMm, scale, dotsPerInch, besideMm } = space;
  const qr = encodeSymbol('QR Code', qrText);
  const qrDots = moduleDots(qr, widthMm * 0.3, 0.6 * scale, dotsPerInch);
  if (qrDots === undefined) return { fits: false, missing: 'qrCode' };
  const qrSideMm = matrixSideMm(qr, qrDots, dotsPerInch);
  const leftMm = widthMm + besideMm - qrSideMm;
  const bars = encodeSymbol('Code 128', tag.benchId);
  const barDots = moduleDots(bars, leftMm + besideMm, 0.45 * scale, dotsPerInch);
  if (barDots === undefined) return { fits: false, missing: 'code128' };
  const moduleMm = barDots * dotMm(dotsPerInch);
  const indentMm = Math.max(0, bars.quietX * moduleMm - besideMm);

  const at = (tightness: number): Block | undefined => {
    const shown = formatBenchId(tag.benchId);
    const textMm = leftMm - gapMm - indentMm;
    const sizeMm = sizeForWidth(
      shown,
      'bold',
      Math.min(textMm, bars.columns * moduleMm),
      sizeForCapHeight(7 * scale),
    );
    const detailMm = sizeAt(tightness, 3.1 * scale, smallestSizeMm);
    const device = paragraph(
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
      textMm,
      tightness === 1,
    );
    if (device === undefined || sizeMm * capHeightEm < armsLengthCapMm) return undefined;
    const identity = headline(shown, {
      role: 'bench ID',
      weight: 'bold',
      sizeMm,
    });
    const column = pile(
      [identity, indented(leastBarsBlock(bars, barDots, dotsPerInch), -bars.quietX * moduleMm), device],
      1.4 * scale,
    );
    const heightMm = Math.max(column.heightMm, qrSideMm);
    return {
      heightMm,
      draw: (xMm, yMm) => [
        ...column.draw(xMm + indentMm, yMm + (heightMm - column.heightMm) / 2),
        matrixAt(
          qr,
          qrDots,
          xMm + widthMm + Math.min(besideMm, qr.quietX * qrDots * dotMm(dotsPerInch)) - qrSideMm,
          yMm + (heightMm - qrSideMm) / 2,
          dotsPerInch,
        ),
      ],
    };
  };
  return { fits: true, missing: 'device', at };
};
