/** Lines to be filled in by hand. */
import { linesOf, stackedLines } from './lines.ts';
import type { Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

/** Room for handwriting: common practice, no source. */
const lineMm = 12;
const ruleMm = 0.25;

/** The name of each stands small over its line. */
export const fillIn = (names: readonly string[], widthMm: number): Strip => ({
  pieces: names.map((text) => ({
    heightMm: lineMm,
    draw: (xMm, yMm) => [
      ...stackedLines(linesOf([{ text, style: textStyles.soft }], widthMm).slice(0, 1)).draw(xMm, yMm + 1),
      {
        kind: 'rectangle',
        xMm,
        yMm: yMm + lineMm - ruleMm,
        widthMm,
        heightMm: ruleMm,
        colour: 'grey',
        radiusMm: 0,
      },
    ],
  })),
  gapMm: 1,
});
