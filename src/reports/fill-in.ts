/** Lines to be filled in by hand. */
import type { PageMark } from '../typesetting/primitive.ts';
import { linesOf, stackedLines } from './lines.ts';
import type { Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

/** Room for handwriting: common practice, no source. */
const lineMm = 11;
const ruleMm = 0.25;

/** The name of each stands small over its line; they stay together. */
export const fillIn = (names: readonly string[], widthMm: number): Strip => ({
  pieces: [
    {
      heightMm: names.length * lineMm,
      draw: (xMm, yMm) =>
        names.flatMap((text, index): readonly PageMark[] => {
          const topMm = yMm + index * lineMm;
          const [name] = linesOf([{ text, style: textStyles.soft }], widthMm);
          return [
            ...stackedLines(name === undefined ? [] : [name]).draw(xMm, topMm + 1),
            {
              kind: 'rectangle',
              xMm,
              yMm: topMm + lineMm - ruleMm,
              widthMm,
              heightMm: ruleMm,
              colour: 'grey',
              radiusMm: 0,
            },
          ];
        }),
    },
  ],
  gapMm: 1,
});
