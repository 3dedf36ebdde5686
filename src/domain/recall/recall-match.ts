/** What became of holding a notice against a device: how surely it is meant, and why. */
import { z } from 'zod';
import { matchLevelSchema } from './match-level.ts';

/** Each is a sentence of the message catalogue. */
export const matchGroundSchema = z.enum([
  'named',
  'other-maker',
  'other-model',
  'serial-outside',
  'made-outside',
  'presumed',
  'maker-in-doubt',
  'model-in-doubt',
  'serial-unreadable',
  'serial-written-otherwise',
  'serial-set-unclear',
  'serial-not-read',
  'made-in-doubt',
]);
export type MatchGround = z.infer<typeof matchGroundSchema>;

export const recallMatchSchema = z.object({
  level: matchLevelSchema,
  /** Why: what excludes it, or all that leaves it in doubt, the first the gravest. */
  grounds: z.array(matchGroundSchema).min(1),
});
export type RecallMatch = z.infer<typeof recallMatchSchema>;
