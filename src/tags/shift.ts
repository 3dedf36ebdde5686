/** Marks moved by whole printer dots, and turned by half a turn for the side of a flag that is seen from behind. */
import { type DotDensity, dotMm, type Primitive } from '../typesetting/primitive.ts';

/** Down and to the right. */
export const shifted = (
  primitives: readonly Primitive[],
  by: { readonly rightDots: number; readonly downDots: number },
  dotsPerInch: DotDensity,
): readonly Primitive[] => {
  const rightMm = by.rightDots * dotMm(dotsPerInch);
  const downMm = by.downDots * dotMm(dotsPerInch);
  const move = (mark: Primitive): Primitive => {
    switch (mark.kind) {
      case 'symbol':
        return { ...mark, leftDots: mark.leftDots + by.rightDots, topDots: mark.topDots + by.downDots };
      case 'text':
        return { ...mark, xMm: mark.xMm + rightMm, baselineMm: mark.baselineMm + downMm };
      case 'path':
      case 'rectangle':
        return { ...mark, xMm: mark.xMm + rightMm, yMm: mark.yMm + downMm };
    }
  };
  return primitives.map(move);
};

/** About the middle of a face of this many dots, which keeps every symbol on the dots of the printer. */
export const halfTurned = (
  primitives: readonly Primitive[],
  face: { readonly widthDots: number; readonly heightDots: number },
  dotsPerInch: DotDensity,
): readonly Primitive[] => {
  const widthMm = face.widthDots * dotMm(dotsPerInch);
  const heightMm = face.heightDots * dotMm(dotsPerInch);
  const turn = (mark: Primitive): Primitive => {
    switch (mark.kind) {
      case 'symbol': {
        const { modules, moduleWidthDots, moduleHeightDots } = mark;
        return {
          ...mark,
          modules: { ...modules, dark: modules.dark.toReversed() },
          leftDots: face.widthDots - mark.leftDots - modules.columns * moduleWidthDots,
          topDots: face.heightDots - mark.topDots - modules.rows * moduleHeightDots,
        };
      }
      case 'text':
        return {
          ...mark,
          xMm: widthMm - mark.xMm,
          baselineMm: heightMm - mark.baselineMm,
          turned: mark.turned !== true,
        };
      case 'path':
        return {
          ...mark,
          xMm: widthMm - mark.xMm,
          yMm: heightMm - mark.yMm,
          turned: mark.turned !== true,
        };
      case 'rectangle':
        return {
          ...mark,
          xMm: widthMm - mark.xMm - mark.widthMm,
          yMm: heightMm - mark.yMm - mark.heightMm,
        };
    }
  };
  return primitives.map(turn);
};
