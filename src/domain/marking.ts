/**
 * The manufacturer's marking, element by element.
 *
 * Source: the elements that must be there and legible are common practice in the trade, and the markings clause of
 * ANSI/ASSP Z359.14 (from memory). An employer's own label never restores one that is lost.
 */
import { z } from 'zod';

export const markingElements = [
  'manufacturer',
  'model',
  'serialNumber',
  'dateOfManufacture',
  'lifelineMaterialAndSize',
  'ratedLength',
  'capacityRange',
  'standard',
  'warnings',
] as const;
export const markingElementSchema = z.enum(markingElements);
export type MarkingElement = z.infer<typeof markingElementSchema>;

/** Marking written by hand that has faded counts as missing (common practice). */
export const markingStates = ['legible', 'illegible', 'missing'] as const;
export const markingStateSchema = z.enum(markingStates);
export type MarkingState = z.infer<typeof markingStateSchema>;

/** One element as it was read off the device: its state, and its words where it is legible. */
export const markingEntrySchema = z.object({
  element: markingElementSchema,
  state: markingStateSchema,
  text: z.string().trim().max(200).optional(),
});
export type MarkingEntry = z.infer<typeof markingEntrySchema>;

/**
 * One element as the register knows it. What a list says of it was not read on the device: it counts as not legible until
 * somebody looks, and `text` is then the list's.
 */
export const knownMarkingEntrySchema = markingEntrySchema.extend({
  state: z.enum([...markingStates, 'not read']),
});
export type KnownMarkingEntry = z.infer<typeof knownMarkingEntrySchema>;
