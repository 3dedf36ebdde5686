/** Whether a reading is below the manufacturer's minimum. */

/** Compared to the hundredth of a millimetre, as callipers read. */
export const isBelowMinimum = (diameterMm: number, minimumMm: number): boolean =>
  Math.round(diameterMm * 100) < Math.round(minimumMm * 100);
