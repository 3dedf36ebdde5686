/** One Code 128 with its quiet zones and nothing else, for reading off a screen or off paper. */
import { toPdf } from '../typesetting/pdf.ts';
import { type DotDensity, dotMm, type Layout } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots, placeSymbol } from '../typesetting/symbol.ts';
import { toPng } from './png.ts';

export interface RenderedSymbol {
  readonly png: Buffer;
  readonly pdf: Uint8Array;
}

/** Wide modules, as a scanner is to read them from a screen as well (common practice, no source). */
const moduleMm = 0.5;
const heightMm = 20;
const dotsPerInch: DotDensity = 203;

export const renderPlainSymbol = async (text: string): Promise<RenderedSymbol> => {
  const modules = encodeSymbol('Code 128', text);
  const widthDots = moduleDots(modules, Number.POSITIVE_INFINITY, moduleMm, dotsPerInch) ?? 1;
  const dot = dotMm(dotsPerInch);
  const heightDots = Math.ceil(heightMm / dot);
  const layout: Layout = {
    widthMm: (modules.columns + 2 * modules.quietX) * widthDots * dot,
    heightMm: heightDots * dot,
    dotsPerInch,
    primitives: [placeSymbol(modules, { xMm: 0, yMm: 0, widthDots, heightDots }, dotsPerInch)],
  };
  return { png: await toPng(layout), pdf: await toPdf([layout], text) };
};
