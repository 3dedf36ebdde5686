/** When a program was adopted, and by whom. */
import { z } from 'zod';
import { calendarDateSchema } from './brand.ts';
import { programSchema } from './program.ts';

export const programAdoptionSchema = programSchema.pick({ key: true, version: true, title: true }).extend({
  /** The first day on which it holds; never after the day on which it was adopted. */
  effectiveFrom: calendarDateSchema,
  on: calendarDateSchema,
  by: z.string(),
  /** Number of the event that holds the whole of it. */
  seq: z.int().positive(),
});
export type ProgramAdoption = z.infer<typeof programAdoptionSchema>;
