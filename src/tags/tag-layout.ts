/** What the layouts of all kinds of tags share: stock, the fixed margin, symbols as blocks, and panels. */
import type { Block } from '../typesetting/paragraph.ts';
import { type Colour, type DotDensity, dotMm, type PlacedSymbol } from '../typesetting/primitive.ts';
import {
  encodeSymbol,
  minimumBarHeightMm,
  moduleDots,
  placeSymbol,
  type SymbolModules,
} from '../typesetting/symbol.ts';

export interface Stock {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Nothing but a quiet zone comes nearer to the edge: a label printer may be this far off (common practice, no source). */
export const edgeMm = 1;

/** Whether a Code 128 of the text, at its least module and with its quiet zones, is no wider than the stock. */
export const barsFitAcross = (
  text: string,
  face: { readonly widthMm: number; readonly dotsPerInch: DotDensity },
): boolean =>
  moduleDots(encodeSymbol('Code 128', text), face.widthMm - 2 * edgeMm, 0, face.dotsPerInch) !== undefined;

/** A linear symbol of the given height with its quiet zone, as wide as it is. */
export const barsBlock = (
  modules: SymbolModules,
  widthDots: number,
  heightMm: number,
  dotsPerInch: DotDensity,
): Block => {
  const heightDots = Math.ceil(heightMm / dotMm(dotsPerInch) - 1e-9);
  return {
    heightMm: (heightDots + 1) * dotMm(dotsPerInch),
    draw: (xMm, yMm) => [placeSymbol(modules, { xMm, yMm, widthDots, heightDots }, dotsPerInch)],
  };
};

export const leastBarsBlock = (modules: SymbolModules, widthDots: number, dotsPerInch: DotDensity): Block =>
  barsBlock(
    modules,
    widthDots,
    minimumBarHeightMm(modules.columns * widthDots * dotMm(dotsPerInch)),
    dotsPerInch,
  );

/** Side of a matrix symbol with its quiet zone, and one dot for the snapping to the grid. */
export const matrixSideMm = (modules: SymbolModules, widthDots: number, dotsPerInch: DotDensity): number =>
  ((modules.columns + 2 * modules.quietX) * widthDots + 1) * dotMm(dotsPerInch);

/** The symbol moved down or right to the dot grid, so that its quiet zone starts at the place. */
export const matrixAt = (
  modules: SymbolModules,
  widthDots: number,
  xMm: number,
  yMm: number,
  dotsPerInch: DotDensity,
): PlacedSymbol => placeSymbol(modules, { xMm, yMm, widthDots }, dotsPerInch);

/** A block on a ground of one colour, with padding around. */
export const onPanel = (
  inner: Block,
  widthMm: number,
  paddingXMm: number,
  paddingYMm: number,
  colour: Colour,
  radiusMm: number,
): Block => {
  const heightMm = inner.heightMm + 2 * paddingYMm;
  return {
    heightMm,
    draw: (xMm, yMm) => [
      { kind: 'rectangle', xMm, yMm, widthMm, heightMm, colour, radiusMm },
      ...inner.draw(xMm + paddingXMm, yMm + paddingYMm),
    ],
  };
};

/** Blocks one under the other with fixed gaps between them. */
export const pile = (blocks: readonly Block[], gapMm: number): Block => ({
  heightMm: blocks.reduce((sum, block) => sum + block.heightMm, 0) + gapMm * Math.max(0, blocks.length - 1),
  draw: (xMm, yMm) => {
    let topMm = yMm;
    return blocks.flatMap((block) => {
      const drawn = block.draw(xMm, topMm);
      topMm += block.heightMm + gapMm;
      return drawn;
    });
  },
});

/** Blocks beside one another, their tops at one height. */
export const beside = (blocks: readonly { readonly block: Block; readonly xMm: number }[]): Block => ({
  heightMm: Math.max(0, ...blocks.map(({ block }) => block.heightMm)),
  draw: (xMm, yMm) => blocks.flatMap(({ block, xMm: offsetMm }) => block.draw(xMm + offsetMm, yMm)),
});

/** The block moved to the right. */
export const indented = (block: Block, byMm: number): Block => ({
  heightMm: block.heightMm,
  draw: (xMm, yMm) => block.draw(xMm + byMm, yMm),
});
