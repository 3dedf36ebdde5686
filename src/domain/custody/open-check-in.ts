/** A check-in that goes on: its device is held already, and not everything that is asked about it was answered. */
import { z } from 'zod';

export const openQuestionsSchema = z.object({
  /** Keys of the questions without an answer. */
  unanswered: z.array(z.string()),
  /** Keys of those that were answered yes while nobody has said yet what it was. */
  unexplained: z.array(z.string()),
});
export type OpenQuestions = z.infer<typeof openQuestionsSchema>;
