/** What can still be seen on a device whose code and label cannot be read. */
import { z } from 'zod';
import { metresSchema } from '../brand.ts';
import { hookTypeSchema, housingColourSchema, lifelineMaterialSchema } from '../model-sheet.ts';

/**
 * What is left of a text: `?` stands for one character that cannot be read, `*` for a run of which not even the number of
 * characters is known. Capitals, spaces and punctuation do not matter. At least one character is readable.
 */
export const fragmentSchema = z
  .string()
  .trim()
  .max(60)
  .regex(/[\p{L}\p{N}]/u);

/** The year as four characters, and where it can be seen, the month as two more: `2018`, `20?8`, `2018-0?`. */
export const dateFragmentSchema = z
  .string()
  .trim()
  .regex(/^(?=.*\d)[\d?]{4}(-[\d?]{2})?$/);

/** Every fact is optional: only what was seen is entered, and what was not seen weighs nothing. */
export const observationSchema = z.object({
  serial: fragmentSchema.optional(),
  manufacturer: fragmentSchema.optional(),
  model: fragmentSchema.optional(),
  dateOfManufacture: dateFragmentSchema.optional(),
  /** As measured, all of it paid out. */
  lengthM: metresSchema.refine((length) => length > 0, { error: 'length' }).optional(),
  lifelineMaterial: lifelineMaterialSchema.optional(),
  hookType: hookTypeSchema.optional(),
  housingColour: housingColourSchema.optional(),
  /** What is left of a label or tag of ours. */
  benchId: fragmentSchema.optional(),
  tagNumber: z.int().positive().max(9999).optional(),
  /** The person who used it last, by person ID. */
  lastUserId: z.string().optional(),
  /** Whether it was found in the place where held devices are kept. */
  found: z.enum(['held place', 'elsewhere']).optional(),
});
export type Observation = z.infer<typeof observationSchema>;

/**
 * The facts in the order in which they are counted, what the model says first. Each is given the weight that it adds to
 * those before it, so that what they say already is not counted twice.
 */
export const observedFields = [
  'manufacturer',
  'model',
  'lengthM',
  'lifelineMaterial',
  'hookType',
  'housingColour',
  'dateOfManufacture',
  'serial',
  'benchId',
  'tagNumber',
  'lastUserId',
  'found',
] as const satisfies readonly (keyof Observation)[];
export type ObservedField = (typeof observedFields)[number];

/** The facts of an observation that were seen, in the order in which they are counted. */
export const seenFields = (observation: Observation): readonly ObservedField[] =>
  observedFields.filter((field) => observation[field] !== undefined);
