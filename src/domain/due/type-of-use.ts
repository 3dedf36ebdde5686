/**
 * How hard a device is used, as a competent person determines it, and what the standard asks for each: ANSI/ASSP Z359.14,
 * Appendix A (published; wording ours, numbers from memory).
 */
import { z } from 'zod';
import { calendarDateSchema } from '../brand.ts';
import type { Source } from '../procedure.ts';

export const typesOfUse = ['infrequent to light', 'moderate to heavy', 'severe to continuous'] as const;
export const typeOfUseSchema = z.enum(typesOfUse);
export type TypeOfUse = z.infer<typeof typeOfUseSchema>;

export const typeOfUseSource: Source = {
  mark: 'from memory',
  citation: 'ANSI/ASSP Z359.14, Appendix A, intervals by type of use',
};

/** All in months. A program chooses within the range; where it says nothing the stricter end counts. */
export interface StandardInterval {
  readonly inspectionMonths: { readonly least: number; readonly most: number };
  readonly revalidationMonths: number;
}

/**
 * Annually; semi-annually to annually; quarterly to semi-annually. Revalidation at least every five years, two years, one
 * year.
 */
export const standardIntervals: Readonly<Record<TypeOfUse, StandardInterval>> = {
  'infrequent to light': { inspectionMonths: { least: 12, most: 12 }, revalidationMonths: 60 },
  'moderate to heavy': { inspectionMonths: { least: 6, most: 12 }, revalidationMonths: 24 },
  'severe to continuous': { inspectionMonths: { least: 3, most: 6 }, revalidationMonths: 12 },
};

/** What a competent person determined, from which day on it holds, and when and by whom it was recorded. */
export const recordedUseSchema = z.object({
  typeOfUse: typeOfUseSchema,
  from: calendarDateSchema,
  on: calendarDateSchema,
  by: z.string(),
});
export type RecordedUse = z.infer<typeof recordedUseSchema>;

/** The use that holds now: of those that hold from the latest day on, the one that was recorded last. */
export const currentUse = (uses: readonly RecordedUse[] | undefined): RecordedUse | undefined =>
  (uses ?? []).reduce<RecordedUse | undefined>(
    (latest, use) => (latest === undefined || use.from >= latest.from ? use : latest),
    undefined,
  );
