/** The foot of a tag that says which device it hangs on: bench ID, Code 128 and device at the left, QR at the right. */
import type { QuarantineTag } from '../domain/tag-content.ts';
import { type Block, paragraph, sizeForCapHeight } from '../typesetting/paragraph.ts';
import { type DotDensity, dotMm } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots } from '../typesetting/symbol.ts';
import { identityHeadline } from './identity-headline.ts';
import { besideMatrix } from './matrix-block.ts';
import { sizeOf } from './part-rule.ts';
import { quarantineRules } from './quarantine-parts.ts';
import { indented, leastBarsBlock, matrixSideMm, pile } from './tag-layout.ts';
import { inOneLine, type TagPart, word } from './words.ts';

export interface IdentitySpace {
  readonly widthMm: number;
  readonly scale: number;
  readonly dotsPerInch: DotDensity;
  /** White that a quiet zone may use to the left of the block and to its right. */
  readonly besideMm: number;
  /** Whether Code 128 stands on the tag. */
  readonly bars: boolean;
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

/** Maker, model and rated length over the serial number. */
export const deviceLines = (tag: QuarantineTag, scale: number, tightness: number) => {
  const sizeMm = sizeOf(quarantineRules.device, scale, tightness);
  return [
    {
      text: `${tag.manufacturer} ${tag.model} · ${tag.ratedLength}`,
      style: { role: 'detail', weight: 'bold', sizeMm },
    },
    {
      text: `${inOneLine(word('serial'), tag.languages)} ${tag.serial}`,
      style: { role: 'detail', weight: 'regular', sizeMm },
    },
  ] as const;
};

export const identityBlock = (tag: QuarantineTag, qrText: string, space: IdentitySpace): Identity => {
  const { widthMm, scale, dotsPerInch, besideMm } = space;
  const modules = encodeSymbol('QR Code', qrText);
  const widthDots = moduleDots(modules, widthMm * 0.3, 0.6 * scale, dotsPerInch);
  if (widthDots === undefined) return { fits: false, missing: 'qrCode' };
  const qr = { modules, widthDots, dotsPerInch };
  const leftMm = widthMm + besideMm - matrixSideMm(modules, widthDots, dotsPerInch);
  const bars = encodeSymbol('Code 128', tag.benchId);
  const barDots = space.bars ? moduleDots(bars, leftMm + besideMm, 0.45 * scale, dotsPerInch) : 0;
  if (barDots === undefined) return { fits: false, missing: 'code128' };
  const moduleMm = barDots * dotMm(dotsPerInch);
  const indentMm = Math.max(0, bars.quietX * moduleMm - besideMm);

  const at = (tightness: number): Block | undefined => {
    const textMm = leftMm - gapMm - indentMm;
    const benchId = identityHeadline(
      tag.benchId,
      barDots === 0 ? textMm : Math.min(textMm, bars.columns * moduleMm),
      sizeForCapHeight(7 * scale),
    );
    const device = paragraph(deviceLines(tag, scale, tightness), textMm, tightness === 1);
    if (device === undefined || benchId === undefined) return undefined;
    const symbol =
      barDots === 0 ? [] : [indented(leastBarsBlock(bars, barDots, dotsPerInch), -bars.quietX * moduleMm)];
    const column = indented(pile([benchId, ...symbol, device], 1.4 * scale), indentMm);
    return besideMatrix(column, qr, { widthMm, besideMm }, 'middle');
  };
  return { fits: true, missing: 'device', at };
};
