/**
 * A correction of the record: what one earlier event said, what is said now, and why. The event itself stays as it is, and
 * both are shown. A correction never changes a verdict or a standing; only a new documented inspection does.
 */
import { z } from 'zod';
import { answerSchema } from './answer.ts';
import { calendarDateSchema } from './brand.ts';
import { personSchema } from './person.ts';

const corrected = <Field extends string, Value extends z.ZodType>(field: Field, value: Value) =>
  z.object({ field: z.literal(field), was: value, now: value });

const serial = z.string().trim().max(80);
const dateOfManufacture = z.string().trim().max(40);

/** Both as they stand in the record: a model sheet and a regular user by their ID. */
export const correctionSchema = z.discriminatedUnion('field', [
  corrected('serial', serial),
  corrected('dateOfManufacture', dateOfManufacture),
  corrected('modelSheet', z.string()),
  /** Absent where there is none. */
  corrected('regularUser', z.string().optional()),
  corrected('answer', answerSchema).extend({ check: z.string() }),
  corrected('name', personSchema.shape.name),
]);
export type Correction = z.infer<typeof correctionSchema>;
export type CorrectedField = Correction['field'];

/** What is said now; what was said is taken from the record itself. */
export const wantedCorrectionSchema = z.discriminatedUnion('field', [
  z.object({ field: z.literal('serial'), now: serial.min(1) }),
  z.object({ field: z.literal('dateOfManufacture'), now: dateOfManufacture.min(1) }),
  z.object({ field: z.literal('modelSheet'), now: z.string() }),
  z.object({ field: z.literal('regularUser'), now: z.string().optional() }),
  z.object({ field: z.literal('answer'), now: answerSchema }),
  z.object({ field: z.literal('name'), now: personSchema.shape.name }),
]);
export type WantedCorrection = z.infer<typeof wantedCorrectionSchema>;

/** A correction as it is kept with what it corrects. */
export const amendmentSchema = z.object({
  /** Number of the event that corrects, and of the one that is corrected. */
  seq: z.int(),
  amends: z.int(),
  on: calendarDateSchema,
  by: z.string(),
  correction: correctionSchema,
  because: z.string(),
});
export type Amendment = z.infer<typeof amendmentSchema>;
