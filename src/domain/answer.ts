/** What the inspector answered to a check. */
import { z } from 'zod';
import { metresSchema, millimetresSchema } from './brand.ts';
import { markingStateSchema } from './marking.ts';

/** A defect seen: its kind, and where it lies along the lifeline where the check asks for that. */
export const findingSchema = z.object({
  defect: z.string().max(60),
  /** Metres from the lower hook along the lifeline. */
  positionM: metresSchema.optional(),
  note: z.string().trim().max(300).optional(),
});
export type Finding = z.infer<typeof findingSchema>;

/** The diameter of the wire rope at one place along the lifeline. */
export const diameterReadingSchema = z.object({
  /** Metres from the lower hook along the lifeline. */
  positionM: metresSchema,
  diameterMm: millimetresSchema,
});
export type DiameterReading = z.infer<typeof diameterReadingSchema>;

export const answerSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('good') }),
  z.object({
    kind: z.literal('defects'),
    findings: z.array(findingSchema).min(1).max(50),
  }),
  z.object({ kind: z.literal('marking'), state: markingStateSchema }),
  z.object({ kind: z.literal('length'), confirmedM: metresSchema }),
  z.object({ kind: z.literal('diameters'), readings: z.array(diameterReadingSchema).max(50) }),
]);
export type Answer = z.infer<typeof answerSchema>;
export type Answers = Readonly<Record<string, Answer>>;
