/** How the least diameter of a lifeline changed over its inspections; it says nothing beyond the last one, and decides nothing. */
import type { CalendarDate } from '../brand.ts';
import { addDays, daysBetween } from '../calendar.ts';
import { leastSquares } from './least-squares.ts';
import type { LifelineInspection } from './lifeline-inspection.ts';

/** The least diameter that was read on a day. */
export interface DiameterPoint {
  readonly inspection: number;
  readonly on: CalendarDate;
  readonly diameterMm: number;
}

/** What one further reading on a day was to be expected to be, in millimetres. */
export interface BandPoint {
  readonly on: CalendarDate;
  readonly fittedMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

export type DiameterTrend =
  | {
      readonly kind: 'too few';
      readonly points: readonly DiameterPoint[];
      /** Days with readings that a trend takes. */
      readonly needed: number;
    }
  | {
      readonly kind: 'trend';
      readonly points: readonly DiameterPoint[];
      /** Negative where the lifeline grew thinner. */
      readonly changeMmPerYear: number;
      readonly residualDeviationMm: number;
      /** From the first reading to the last, in even steps, and no further. */
      readonly band: readonly BandPoint[];
    };

/** Two parameters are fitted, so that with three days one degree of freedom is left. */
export const leastDays = 3;
/** The share of further readings that the band is to hold. */
export const bandConfidence = 0.95;
const bandSteps = 24;
/** Mean length of a Gregorian year: 146,097 days in 400 years. */
const daysAYear = 365.2425;

/** One point for each inspection that has readings, oldest first. */
export const diameterPoints = (inspections: readonly LifelineInspection[]): readonly DiameterPoint[] =>
  inspections
    .flatMap(({ inspection, on, readings }) =>
      readings.length === 0
        ? []
        : [{ inspection, on, diameterMm: Math.min(...readings.map(({ diameterMm }) => diameterMm)) }],
    )
    .toSorted((a, b) => a.on.localeCompare(b.on) || a.inspection - b.inspection);

/** `points` are oldest first. */
export const diameterTrend = (points: readonly DiameterPoint[]): DiameterTrend => {
  const [first] = points;
  const last = points.at(-1);
  const days = new Set(points.map(({ on }) => on)).size;
  const tooFew = { kind: 'too few', points, needed: leastDays } as const;
  if (first === undefined || last === undefined || days < leastDays) return tooFew;
  const yearsTo = (on: CalendarDate) => daysBetween(first.on, on) / daysAYear;
  const line = leastSquares(points.map(({ on, diameterMm }) => ({ x: yearsTo(on), y: diameterMm })));
  if (line === undefined) return tooFew;
  return {
    kind: 'trend',
    points,
    changeMmPerYear: line.slope,
    residualDeviationMm: line.residualDeviation,
    band: evenDays(first.on, last.on).map((on) => {
      const { fitted, low, high } = line.predict(yearsTo(on), bandConfidence);
      return { on, fittedMm: fitted, lowMm: low, highMm: high };
    }),
  };
};

const evenDays = (from: CalendarDate, to: CalendarDate): readonly CalendarDate[] => {
  const days = daysBetween(from, to);
  const offsets = Array.from({ length: bandSteps + 1 }, (_, step) => Math.round((days * step) / bandSteps));
  return [...new Set(offsets)].map((offset) => addDays(from, offset));
};

/** True where a reading is below the maker's minimum, compared to the hundredth of a millimetre, as callipers read. */
export const isBelowMinimum = (diameterMm: number, minimumMm: number): boolean =>
  Math.round(diameterMm * 100) < Math.round(minimumMm * 100);
