/** What somebody answers to a question at check-in, of one device. */
import { z } from 'zod';

export const checkInAnswerSchema = z.discriminatedUnion('said', [
  z.object({ question: z.string(), said: z.literal('no') }),
  /** Nobody who is here knows: that is a doubt, and the device stays out of service. */
  z.object({ question: z.string(), said: z.literal('not known') }),
  z.object({
    question: z.string(),
    said: z.literal('yes'),
    /** Keys of the question's choices, at least one. */
    choices: z.array(z.string()).min(1),
    note: z.string().trim().max(200).optional(),
  }),
]);
export type CheckInAnswer = z.infer<typeof checkInAnswerSchema>;
