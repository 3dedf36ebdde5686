/** The scale of the lifeline strip: ticks in the station's unit, and the positions that a touch or an arrow key can reach. */
import { type Metres, metres } from '../../src/domain/brand.ts';
import { fromUnit, type LengthUnit, toUnit } from '../../src/domain/length.ts';

export interface Tick {
  /** From the hook, 0, to the housing, 1. */
  readonly fraction: number;
  /** The number beside a major tick, in the unit of the scale; minor ticks have none. */
  readonly value: number | undefined;
}

/** Distances between numbered ticks; the smallest that gives at most ten of them is taken. */
const majorSteps = [0.5, 1, 2, 5, 10, 20, 50] as const;
const mostMajorTicks = 10;
const minorTicksPerMajor = 5;

/** Where a touch lands: a tenth of a metre, half a foot; closer than that a gloved finger does not point. */
const fineStep: Readonly<Record<LengthUnit, number>> = { m: 0.1, ft: 0.5 };
const coarseStep: Readonly<Record<LengthUnit, number>> = { m: 1, ft: 5 };

/** The ticks from 0 to the rated length, which need not be a whole number of them. */
export const stripTicks = (ratedLengthM: Metres, unit: LengthUnit): readonly Tick[] => {
  const length = toUnit(ratedLengthM, unit);
  const major = majorSteps.find((step) => length / step <= mostMajorTicks) ?? 100;
  const minor = major / minorTicksPerMajor;
  const count = Math.floor(length / minor + 1e-6);
  return Array.from({ length: count + 1 }, (_, index) => ({
    fraction: (index * minor) / length,
    value: index % minorTicksPerMajor === 0 ? rounded(index * minor) : undefined,
  }));
};

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
