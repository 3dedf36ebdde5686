/** Command symbols in rows, each as wide as it must be, with its name above the bars; each group begins a row. */
import type { Language } from '../domain/message.ts';
import { type Block, paragraph, type Style } from '../typesetting/paragraph.ts';
import { type DotDensity, dotMm } from '../typesetting/primitive.ts';
import { encodeSymbol, minimumBarHeightMm, moduleDots, placeSymbol } from '../typesetting/symbol.ts';
import type { Command } from './command-sheet.ts';
import { pile } from './tag-layout.ts';
import { inEach } from './words.ts';

export interface RowSizes {
  readonly widthMm: number;
  /** At least; bars are never lower than their length asks for. */
  readonly barsMm: number;
  /** Em size of the names. */
  readonly sizeMm: number;
  /** Between two rows. */
  readonly gapMm: number;
  readonly dotsPerInch: DotDensity;
}

/** White between two symbols besides their quiet zones, so that no name is read on into the next. */
const betweenMm = 2;

/** `undefined` where a name is wider than its symbol even when each word has a line of its own. */
export const commandRows = (
  groups: readonly (readonly Command[])[],
  languages: readonly Language[],
  sizes: RowSizes,
): Block | undefined => {
  const rows: { block: Block; xMm: number }[][] = [];
  for (const commands of groups) {
    let xMm = Number.POSITIVE_INFINITY;
    for (const command of commands) {
      const cell = cellOf(command, languages, sizes);
      if (cell === undefined) return undefined;
      if (xMm + cell.widthMm > sizes.widthMm) {
        rows.push([]);
        xMm = 0;
      }
      rows.at(-1)?.push({ block: cell.block, xMm });
      xMm += cell.widthMm + betweenMm;
    }
  }
  return pile(rows.map(onOneLine), sizes.gapMm);
};

/** Beside one another, their lower ends at one height, so that the bars of a row stand in line. */
const onOneLine = (cells: readonly { readonly block: Block; readonly xMm: number }[]): Block => {
  const heightMm = Math.max(0, ...cells.map(({ block }) => block.heightMm));
  return {
    heightMm,
    draw: (xMm, yMm) =>
      cells.flatMap(({ block, xMm: offsetMm }) =>
        block.draw(xMm + offsetMm, yMm + heightMm - block.heightMm),
      ),
  };
};

const cellOf = (
  { text, label }: Command,
  languages: readonly Language[],
  { widthMm, barsMm, sizeMm, dotsPerInch }: RowSizes,
): { readonly block: Block; readonly widthMm: number } | undefined => {
  const modules = encodeSymbol('Code 128', text);
  const widthDots = moduleDots(modules, widthMm, 0, dotsPerInch);
  if (widthDots === undefined) return undefined;
  const dot = dotMm(dotsPerInch);
  const quietMm = modules.quietX * widthDots * dot;
  const barsWideMm = modules.columns * widthDots * dot;
  const wholeMm = barsWideMm + 2 * quietMm;
  const style: Style = { role: 'label', weight: 'bold', sizeMm };
  const names = inEach(label, languages).map((name) => ({ text: name, style }));
  const name = paragraph(names, wholeMm - quietMm, false);
  if (name === undefined) return undefined;
  const heightDots = Math.ceil(Math.max(barsMm, minimumBarHeightMm(barsWideMm)) / dot);
  const bars: Block = {
    heightMm: (heightDots + 1) * dot,
    draw: (xMm, yMm) => [placeSymbol(modules, { xMm, yMm, widthDots, heightDots }, dotsPerInch)],
  };
  const shifted: Block = { heightMm: name.heightMm, draw: (xMm, yMm) => name.draw(xMm + quietMm, yMm) };
  return { block: pile([shifted, bars], 0.6), widthMm: wholeMm };
};
