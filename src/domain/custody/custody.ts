/** Who has a device: what is recorded while it is out, and what ended each time that it was. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema, instantSchema } from '../brand.ts';
import { languageSchema } from '../message.ts';

/**
 * A user's word that they looked a device over before use, on this list, in this language. It is a confirmation and never a
 * documented inspection.
 */
export const preUseConfirmationSchema = z.object({
  list: z.object({ key: z.string(), version: z.int().positive() }),
  language: languageSchema,
});
export type PreUseConfirmation = z.infer<typeof preUseConfirmationSchema>;

/** Absent on a device that is in store. `spell` is the number of the event with which it began. */
export const custodySchema = z.object({
  spell: z.int().positive(),
  userId: z.string(),
  since: z.object({ on: calendarDateSchema, at: instantSchema }),
  /** Who handed it out: a person's ID. */
  handedOutBy: z.string(),
  expectedOn: calendarDateSchema.optional(),
  kitId: z.string().optional(),
  /** Since when it is written off as never returned. */
  lostOn: calendarDateSchema.optional(),
});
export type Custody = z.infer<typeof custodySchema>;

/** One time that a user had a device, open or ended. */
export const custodySpellSchema = custodySchema.extend({
  benchId: benchIdSchema,
  ended: z
    .object({
      on: calendarDateSchema,
      at: instantSchema,
      how: z.enum(['checked in', 'transferred']),
      by: z.string(),
    })
    .optional(),
});
export type CustodySpell = z.infer<typeof custodySpellSchema>;

/** Where a device has its place in store: the code on the label of the shelf, and since when it is known to lie there. */
export const storedSchema = z.object({ place: z.string(), on: calendarDateSchema });
export type Stored = z.infer<typeof storedSchema>;
