/** A QR Code for whoever checks the report later, with what it holds beside it. */
import { type DotDensity, dotMm, type PageMark } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots, placeSymbol } from '../typesetting/symbol.ts';
import { linesOf, stackedLines } from './lines.ts';
import type { Told } from './report-words.ts';
import type { Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

const dotsPerInch: DotDensity = 600;
/** Nearly four dots of a scan at 200 dots per inch: of three, one symbol in thirty was not read there. Common practice, no source. */
const preferredModuleMm = 0.5;
const widestMm = 80;
const gutterMm = 5;

/** Characters that a QR Code takes at most as bytes, version 40 at level L (ISO/IEC 18004, table 7). */
export const longestQrText = 2953;

/** `undefined` where the text is too long for one symbol, or its modules would be too small to read. */
export const symbolStrip = (text: string, beside: Told, widthMm: number): Strip | undefined => {
  if (Buffer.byteLength(text) > longestQrText) return undefined;
  const modules = encodeSymbol('QR Code', text, 'L');
  const widthDots = moduleDots(modules, widestMm, preferredModuleMm, dotsPerInch);
  if (widthDots === undefined) return undefined;
  const sideMm = (modules.columns + 2 * modules.quietX) * widthDots * dotMm(dotsPerInch);
  const lines = linesOf(
    beside.map((told) => ({ text: told, style: textStyles.body })),
    widthMm - sideMm - gutterMm,
  );
  const words = stackedLines(lines);
  const heightMm = Math.max(sideMm + dotMm(dotsPerInch), words.heightMm);
  return {
    pieces: [
      {
        heightMm,
        draw: (xMm, yMm): readonly PageMark[] => [
          placeSymbol(modules, { xMm, yMm, widthDots }, dotsPerInch),
          ...words.draw(xMm + sideMm + gutterMm, yMm + modules.quietY * widthDots * dotMm(dotsPerInch)),
        ],
      },
    ],
    gapMm: 1,
  };
};
