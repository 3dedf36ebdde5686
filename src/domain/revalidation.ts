/** A revalidation of a device by its manufacturer, as the certificate says. */
import { z } from 'zod';
import { calendarDateSchema } from './brand.ts';

export const revalidationSchema = z.object({
  revalidatedOn: calendarDateSchema,
  /** The manufacturer, or the centre that it authorised. */
  revalidatedBy: z.string().trim().min(1).max(120),
  /** What names the certificate: a number, a file. */
  certificate: z.string().trim().min(1).max(120),
});
export type Revalidation = z.infer<typeof revalidationSchema>;
