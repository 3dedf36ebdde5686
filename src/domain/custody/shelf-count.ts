/** A count of one place: what was scanned there, held against what should lie there. */
import { z } from 'zod';
import { type BenchId, benchIdSchema, calendarDateSchema } from '../brand.ts';
import type { Device } from '../device.ts';
import { placeCodeSchema } from './place-code.ts';

const benchIds = z.array(benchIdSchema);

export const countResultSchema = z.object({
  place: placeCodeSchema,
  /** Scanned, and it belongs here or had no place until now. */
  found: benchIds,
  /** It belongs here, is not recorded out, and was not scanned. */
  missing: benchIds,
  /** Scanned, and it belongs to another place. */
  wrongPlace: z.array(z.object({ benchId: benchIdSchema, place: placeCodeSchema })),
  /** Scanned, though it is recorded out: it wants its check-in. */
  recordedOut: benchIds,
  /** Codes without a device. */
  unknown: z.array(z.string()),
});
export type CountResult = z.infer<typeof countResultSchema>;

/** The last count of a place, kept with the station. */
export const countedPlaceSchema = z.object({
  place: placeCodeSchema,
  on: calendarDateSchema,
  by: z.string(),
  found: z.int(),
  missing: z.int(),
  wrongPlace: z.int(),
  recordedOut: z.int(),
  unknown: z.int(),
});
export type CountedPlace = z.infer<typeof countedPlaceSchema>;

/** `belonging` are the devices whose place it is; `scanned` those that lie there. A device counts once. */
export const countOf = (
  place: string,
  belonging: readonly Device[],
  scanned: readonly Device[],
  unknown: readonly string[],
): CountResult => {
  const once = [...new Map(scanned.map((device) => [device.benchId, device])).values()];
  const seen = new Set<BenchId>(once.map(({ benchId }) => benchId));
  const inStore = once.filter(({ custody }) => custody === undefined);
  return {
    place,
    found: ids(inStore.filter(({ stored }) => (stored?.place ?? place) === place)),
    missing: ids(
      belonging.filter(
        ({ benchId, custody, standing }) =>
          custody === undefined && standing !== 'scrapped' && !seen.has(benchId),
      ),
    ),
    wrongPlace: inStore.flatMap(({ benchId, stored }) =>
      stored === undefined || stored.place === place ? [] : [{ benchId, place: stored.place }],
    ),
    recordedOut: ids(once.filter(({ custody }) => custody !== undefined)),
    unknown: [...new Set(unknown)],
  };
};

const ids = (devices: readonly Device[]): BenchId[] => devices.map(({ benchId }) => benchId);
