/** A documented inspection, from its start to its signature. */

import { z } from 'zod';
import { amendmentSchema } from './amendment.ts';
import { type Answers, answerSchema } from './answer.ts';
import { benchIdSchema, calendarDateSchema, instantSchema } from './brand.ts';
import { dueWhatSchema } from './due/due-date.ts';
import { verdictSchema } from './verdict.ts';

export const answeredSchema = z.object({ answer: answerSchema, by: z.string(), at: instantSchema });
export type Answered = z.infer<typeof answeredSchema>;

export const inspectionSchema = z.object({
  /** Counts up over the station, from 1. */
  inspection: z.int().positive(),
  benchId: benchIdSchema,
  /** Which procedure, which edition, with the hash of its data. */
  procedure: z.object({ key: z.string(), version: z.int(), sha256: z.string() }),
  /** The blind re-inspection that it is the second inspection of. */
  reinspection: z.int().positive().optional(),
  startedBy: z.string(),
  startedOn: calendarDateSchema,
  state: z.enum(['open', 'signed', 'abandoned']),
  /** The latest answer to each check, by check key. */
  answers: z.record(z.string(), answeredSchema),
  signed: z
    .object({
      by: z.string(),
      on: calendarDateSchema,
      verdict: verdictSchema,
      dueOn: calendarDateSchema.optional(),
      /** What `dueOn` is the date of; absent in records from before programs were adopted. */
      dueFor: dueWhatSchema.optional(),
      tagNumber: z.int(),
    })
    .optional(),
  /** Corrections of its answers after it was signed, oldest first; absent where none was made. The verdict stays as signed. */
  amendments: z.array(amendmentSchema).optional(),
  abandoned: z.object({ by: z.string(), on: calendarDateSchema, why: z.string() }).optional(),
});
export type Inspection = z.infer<typeof inspectionSchema>;

export const answersOf = (inspection: Inspection): Answers =>
  Object.fromEntries(Object.entries(inspection.answers).map(([key, answered]) => [key, answered.answer]));
