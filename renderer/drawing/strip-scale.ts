/** The positions on the lifeline strip that a touch or an arrow key can reach. */
import { type Metres, metres } from '../../src/domain/brand.ts';
import { fromUnit, type LengthUnit, toUnit } from '../../src/domain/length.ts';

/** Where a touch lands: a tenth of a metre, half a foot; closer than that a gloved finger does not point. */
const fineStep: Readonly<Record<LengthUnit, number>> = { m: 0.1, ft: 0.5 };
const coarseStep: Readonly<Record<LengthUnit, number>> = { m: 1, ft: 5 };

/** The position under a touch, snapped to the fine step and kept on the lifeline. */
export const positionAt = (fraction: number, ratedLengthM: Metres, unit: LengthUnit): Metres =>
  snapped(toUnit(metres(fraction * ratedLengthM), unit), ratedLengthM, unit);

/** The position one step away; without a position yet, a step starts from the hook. */
export const nudged = (
  positionM: Metres | undefined,
  direction: -1 | 1,
  size: 'fine' | 'coarse',
  ratedLengthM: Metres,
  unit: LengthUnit,
): Metres => {
  const step = size === 'fine' ? fineStep[unit] : coarseStep[unit];
  return snapped(toUnit(positionM ?? metres(0), unit) + direction * step, ratedLengthM, unit);
};

/** The number that stands for a position, as a person would type it: `3.2`, at most two decimals. */
export const typedPosition = (positionM: Metres, unit: LengthUnit): string =>
  String(rounded(toUnit(positionM, unit)));

const snapped = (value: number, ratedLengthM: Metres, unit: LengthUnit): Metres => {
  const step = fineStep[unit];
  const position = fromUnit(rounded(Math.round(value / step) * step), unit);
  return metres(Math.min(Math.max(position, 0), ratedLengthM));
};

const rounded = (value: number): number => Math.round(value * 100) / 100;
