/** The dark modules of a symbol as few rectangles: bars, and runs along the rows. */
import type { PlacedSymbol } from './primitive.ts';

/** In printer dots from the top left of the face. */
export interface DotRectangle {
  readonly leftDots: number;
  readonly topDots: number;
  readonly widthDots: number;
  readonly heightDots: number;
}

export const darkRuns = (symbol: PlacedSymbol): readonly DotRectangle[] => {
  const { columns, rows, dark } = symbol.modules;
  const runs: DotRectangle[] = [];
  for (let row = 0; row < rows; row += 1) {
    let column = 0;
    while (column < columns) {
      if (dark[row * columns + column] !== 1) {
        column += 1;
        continue;
      }
      const first = column;
      while (column < columns && dark[row * columns + column] === 1) column += 1;
      runs.push({
        leftDots: symbol.leftDots + first * symbol.moduleWidthDots,
        topDots: symbol.topDots + row * symbol.moduleHeightDots,
        widthDots: (column - first) * symbol.moduleWidthDots,
        heightDots: symbol.moduleHeightDots,
      });
    }
  }
  return runs;
};
