/** What somebody answers to a question at check-in, of one device. */
import { z } from 'zod';

export const checkInAnswerSchema = z.discriminatedUnion('said', [
  z.object({ question: z.string(), said: z.literal('no') }),
  /** Nobody who is here knows: that is a doubt, and the device stays out of service. */
  z.object({ question: z.string(), said: z.literal('not known') }),
  z.object({
    question: z.string(),
    said: z.literal('yes'),
    /** Keys of the question's choices; empty as long as nobody has said what it was. */
    choices: z.array(z.string()),
    note: z.string().trim().max(200).optional(),
  }),
]);
export type CheckInAnswer = z.infer<typeof checkInAnswerSchema>;

/** A yes that says what it was. */
export const isExplained = (answer: CheckInAnswer): boolean =>
  answer.said === 'yes' && (answer.choices.length > 0 || answer.note !== undefined);

/** The keys of the reasons that these answers take the place of: it is said now what a bare yes was. */
export const explainedReasons = (answers: readonly CheckInAnswer[]): readonly string[] =>
  answers.filter(isExplained).map(({ question }) => unexplainedYes(question));

/** The key of the reason of a yes while nobody has said what it was. */
export const unexplainedYes = (question: string): string => `check-in.${question}.yes`;
