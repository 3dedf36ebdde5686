/** The offset of a printer from what a person reads on the printed calibration pattern. */
import type { DestinationSettings } from '../destination-settings.ts';
import type { PatternSize } from './pattern.ts';

type Offset = DestinationSettings['offset'];

/**
 * What the rulers read at the cut edges, in millimetres and their fractions. An edge that the ruler does not reach, for the
 * print lies too far from it, reads zero (left, top) or the full size (right, bottom).
 */
export interface RulerReading {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
}

/** The new offset. A print too far to the left is cut at the left, where the ruler then reads more than zero. */
export const offsetFromRulers = (reading: RulerReading, stock: PatternSize, current: Offset): Offset => ({
  xMm: tenths(current.xMm - shift(reading.leftMm, reading.rightMm, stock.widthMm)),
  yMm: tenths(current.yMm - shift(reading.topMm, reading.bottomMm, stock.heightMm)),
});

/** How far the print lies to the right of, or below, its place. */
const shift = (near: number, far: number, lengthMm: number): number => (near > 0 ? -near : lengthMm - far);

/** The distances of the centre of the cross from the left and the upper edge, for a printer that leaves the edges white. */
export interface CrossReading {
  readonly fromLeftMm: number;
  readonly fromTopMm: number;
}

export const offsetFromCross = (reading: CrossReading, stock: PatternSize, current: Offset): Offset => ({
  xMm: tenths(current.xMm - (reading.fromLeftMm - stock.widthMm / 2)),
  yMm: tenths(current.yMm - (reading.fromTopMm - stock.heightMm / 2)),
});

/** A ruler is read no finer. */
const tenths = (mm: number): number => {
  const rounded = Math.round(mm * 10) / 10;
  return rounded === 0 ? 0 : rounded;
};
