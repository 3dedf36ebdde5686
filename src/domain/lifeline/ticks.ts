/** The ticks of a scale along a lifeline, in feet or metres. */
import type { Metres } from '../brand.ts';
import { type LengthUnit, toUnit } from '../length.ts';

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

/** The ticks from 0 to the rated length, which need not be a whole number of them. */
export const lifelineTicks = (ratedLengthM: Metres, unit: LengthUnit): readonly Tick[] => {
  const length = toUnit(ratedLengthM, unit);
  const major = majorSteps.find((step) => length / step <= mostMajorTicks) ?? 100;
  const minor = major / minorTicksPerMajor;
  const count = Math.floor(length / minor + 1e-6);
  return Array.from({ length: count + 1 }, (_, index) => ({
    fraction: (index * minor) / length,
    value: index % minorTicksPerMajor === 0 ? Math.round(index * minor * 100) / 100 : undefined,
  }));
};
