/** The box that a mark takes up: ink of a text, symbol with its quiet zone, drawing with its line. */
import { type Box, inkBoxOf, type Path, type Primitive, quietBoxOf } from '../typesetting/primitive.ts';

export const markBoxOf = (mark: Primitive): Box => {
  switch (mark.kind) {
    case 'text':
      return inkBoxOf(mark);
    case 'symbol':
      return quietBoxOf(mark);
    case 'rectangle':
      return mark;
    case 'path':
      return pathBox(mark);
  }
};

/** At most: no coordinate of a drawing is beyond the largest number in it, to the right or down. */
const pathBox = (path: Path): Box => {
  const largest = Math.max(...(path.data.match(/[\d.]+/g) ?? []).map(Number));
  const sideMm = (largest + (path.strokeUnits ?? 0) / 2) * path.unitMm;
  const back = path.turned === true ? sideMm : 0;
  return { xMm: path.xMm - back, yMm: path.yMm - back, widthMm: sideMm, heightMm: sideMm };
};
