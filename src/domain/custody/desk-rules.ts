/** What is asked at the desk, as versioned data (`assets/desk/`): the short list before use, and the questions at check-in. */
import { z } from 'zod';
import { messageSchema } from '../message.ts';
import { sourceSchema, zoneSchema } from '../procedure.ts';

const keySchema = z.string().regex(/^[a-z][a-z-]*$/);

const choiceSchema = z.object({
  key: keySchema,
  zone: zoneSchema,
  label: messageSchema,
  /** The sentence that goes on the tag. */
  reason: messageSchema,
});

export const checkInQuestionSchema = z.object({
  key: keySchema,
  zone: zoneSchema,
  text: messageSchema,
  source: sourceSchema,
  /** The sentence that goes on the tag as soon as the answer is yes, before it is said what it was; the question itself where absent. */
  yes: messageSchema.optional(),
  /** What a yes may mean; each holds the device. */
  choices: z.array(choiceSchema).min(1).max(9),
  /** The sentence that goes on the tag where nobody knows. */
  unknown: messageSchema,
});
export type CheckInQuestion = z.infer<typeof checkInQuestionSchema>;

export const deskRulesSchema = z.object({
  key: z.string(),
  version: z.int().positive(),
  preUse: z.object({
    items: z.array(z.object({ key: keySchema, zone: zoneSchema, text: messageSchema })).min(1),
    confirmation: messageSchema,
    source: sourceSchema,
  }),
  checkIn: z.array(checkInQuestionSchema).min(1),
  /** Why a device that was never returned is out of service. */
  lost: messageSchema,
});
export type DeskRules = z.infer<typeof deskRulesSchema>;
