/** What the stock of a tag is besides its size: its form, its hole, its red header. Millimetres from the top left. */
import { z } from 'zod';

const mm = z.number().min(0).max(420);

/** Flat; wound round a strap with a clear tail over the print; or folded over as a flag. */
export const tagFormSchema = z.discriminatedUnion('shape', [
  z.object({ shape: z.literal('flat') }),
  z.object({ shape: z.literal('wrap'), tailAt: z.enum(['right', 'below']), tailMm: mm }),
  z.object({
    shape: z.literal('flag'),
    fold: z.enum(['level', 'upright']),
    sides: z.enum(['both', 'one']),
    clearMm: mm,
  }),
]);

export const tagFaceSchema = z.object({
  form: tagFormSchema.default({ shape: 'flat' }),
  /** The hole for the tie: its centre and its diameter. */
  hole: z.object({ xMm: mm, yMm: mm, diameterMm: z.number().min(1).max(20) }).optional(),
  /** Height of the red header that is printed on the stock already; for quarantine tags alone. */
  preprintedHeaderMm: z.number().min(10).max(150).optional(),
});
export type TagFace = z.infer<typeof tagFaceSchema>;
