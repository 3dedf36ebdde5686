/** The model sheet: what the company entered from the maker's manual, once for all devices of the model. */
import { z } from 'zod';
import { metresSchema, millimetresSchema } from './brand.ts';

export const lifelineMaterialSchema = z.enum(['galvanised', 'stainless']);
export type LifelineMaterial = z.infer<typeof lifelineMaterialSchema>;

/** What the hook at the end of the lifeline looks like, for telling devices apart. */
export const hookTypes = [
  'snap hook',
  'swivel snap hook',
  'carabiner',
  'swivel carabiner',
  'large hook',
] as const;
export const hookTypeSchema = z.enum(hookTypes);
export type HookType = z.infer<typeof hookTypeSchema>;

export const housingColours = [
  'black',
  'grey',
  'white',
  'bare metal',
  'red',
  'orange',
  'yellow',
  'green',
  'blue',
] as const;
export const housingColourSchema = z.enum(housingColours);
export type HousingColour = z.infer<typeof housingColourSchema>;

export const serviceLifeSchema = z.object({
  years: z.int().min(1).max(50),
  from: z.enum(['manufacture', 'first use']),
});
export type ServiceLife = z.infer<typeof serviceLifeSchema>;

export const modelSheetSchema = z.object({
  modelSheetId: z.string(),
  manufacturer: z.string().trim().min(1).max(80),
  model: z.string().trim().min(1).max(80),
  ratedLengthM: metresSchema.refine((length) => length > 0, { error: 'length' }),
  lifelineMaterial: lifelineMaterialSchema,
  lifelineDiameterMm: millimetresSchema,
  /** The least diameter at which the manufacturer still lets the lifeline be used, where the manual states one. */
  lifelineMinimumDiameterMm: millimetresSchema
    .refine((diameter) => diameter > 0, { error: 'length' })
    .optional(),
  /** Capacity range with tools, in kilograms. */
  capacityKg: z.object({ from: z.number().positive(), to: z.number().positive() }),
  standard: z.string().trim().min(1).max(120),
  loadIndicatorFitted: z.boolean(),
  /** The manufacturer's longest interval between inspections by a competent person, in months, where the manual states one. */
  manufacturerIntervalMonths: z.int().min(1).max(60).optional(),
  /** The manufacturer's longest interval between revalidations by itself, in months, where the manual states one. */
  manufacturerRevalidationMonths: z.int().min(1).max(240).optional(),
  /** The longest that the manufacturer lets a device be used, where the manual states it. */
  serviceLife: serviceLifeSchema.optional(),
  /** The maker's number of the model, as its symbol on the device carries it: a GTIN or a part number. */
  manufacturerReference: z.string().trim().min(1).max(80).optional(),
  /** How the manufacturer is reached: address, telephone, e-mail, in as many lines as it takes. */
  manufacturerContact: z.string().trim().min(1).max(400).optional(),
  /** Which manual, which edition. */
  manual: z.string().trim().max(200).optional(),
  hookType: hookTypeSchema.optional(),
  housingColour: housingColourSchema.optional(),
});
export type ModelSheet = z.infer<typeof modelSheetSchema>;
