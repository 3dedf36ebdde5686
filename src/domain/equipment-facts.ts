/**
 * What EN 365:2004 §4.7 (from memory) asks of the record of a device and no marking says: when it was bought, and when it
 * was first put into use.
 */
import { z } from 'zod';

/** A year, a month or a day, as far as it is known (`2021`, `2021-05`, `2021-05-14`). */
export const knownDateSchema = z.union([
  z.iso.date(),
  z.string().regex(/^(19|20)\d\d-(0[1-9]|1[0-2])$/),
  z.string().regex(/^(19|20)\d\d$/),
]);

export const equipmentFactsSchema = z.object({
  /** Absent where nobody knows. */
  purchasedOn: knownDateSchema.optional(),
  firstUsedOn: knownDateSchema.optional(),
});
export type EquipmentFacts = z.infer<typeof equipmentFactsSchema>;

/** Whether the first date is before the second for certain, however much of either is known. */
export const isCertainlyBefore = (first: string, second: string): boolean => {
  const known = Math.min(first.length, second.length);
  return first.slice(0, known) < second.slice(0, known);
};
