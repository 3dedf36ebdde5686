/** How the least diameter of a lifeline changed over its inspections; it says nothing beyond the last one, and decides nothing. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from '../brand.ts';
import { addDays, daysBetween } from '../calendar.ts';
import { leastSquares } from './least-squares.ts';
import type { LifelineInspection } from './lifeline-inspection.ts';

/** The least diameter that was read on a day. */
const diameterPointSchema = z.object({
  inspection: z.int(),
  on: calendarDateSchema,
  diameterMm: z.number(),
});
export type DiameterPoint = z.infer<typeof diameterPointSchema>;

/** What one further reading on a day was to be expected to be. */
const bandPointSchema = z.object({
  on: calendarDateSchema,
  fittedMm: z.number(),
  lowMm: z.number(),
  highMm: z.number(),
});

export const diameterTrendSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('too few'),
    points: z.array(diameterPointSchema),
    /** Days with readings that a trend takes. */
    needed: z.int(),
  }),
  z.object({
    kind: z.literal('trend'),
    points: z.array(diameterPointSchema),
    /** Negative where the lifeline grew thinner. */
    changeMmPerYear: z.number(),
    residualDeviationMm: z.number(),
    /** From the first reading to the last, in even steps, and no further. */
    band: z.array(bandPointSchema),
  }),
]);
export type DiameterTrend = z.infer<typeof diameterTrendSchema>;

/** Two parameters are fitted, so that with three days one degree of freedom is left. */
export const leastDays = 3;
/** The share of further readings that the band is to hold. */
export const bandConfidence = 0.95;
const bandSteps = 24;
/** Mean length of a Gregorian year: 146,097 days in 400 years. */
const daysAYear = 365.2425;

/** One point for each signed inspection that has readings, oldest first. */
export const diameterPoints = (inspections: readonly LifelineInspection[]): DiameterPoint[] =>
  inspections
    .flatMap(({ inspection, state, on, readings }) =>
      state !== 'signed' || readings.length === 0
        ? []
        : [{ inspection, on, diameterMm: Math.min(...readings.map(({ diameterMm }) => diameterMm)) }],
    )
    .toSorted((a, b) => a.on.localeCompare(b.on) || a.inspection - b.inspection);

/** `points` are oldest first. */
export const diameterTrend = (points: readonly DiameterPoint[]): DiameterTrend => {
  const [first] = points;
  const last = points.at(-1);
  const days = new Set(points.map(({ on }) => on)).size;
  const tooFew: DiameterTrend = { kind: 'too few', points: [...points], needed: leastDays };
  if (first === undefined || last === undefined || days < leastDays) return tooFew;
  const yearsTo = (on: CalendarDate) => daysBetween(first.on, on) / daysAYear;
  const line = leastSquares(points.map(({ on, diameterMm }) => ({ x: yearsTo(on), y: diameterMm })));
  if (line === undefined) return tooFew;
  return {
    kind: 'trend',
    points: [...points],
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
