/** The ordered checks of a documented inspection, as versioned data (`assets/procedures/`). */
import { z } from 'zod';
import { markingElementSchema } from './marking.ts';
import { messageSchema } from './message.ts';

/** The part of the device that a check looks at; the drawing lights the zone of the same name. */
export const zones = [
  'marking',
  'history',
  'upper-hook',
  'housing',
  'fasteners',
  'indicator',
  'lower-hook',
  'termination',
  'lifeline',
  'retraction',
  'brake',
  'whole-device',
] as const;
export const zoneSchema = z.enum(zones);
export type Zone = z.infer<typeof zoneSchema>;

/**
 * What a defect does to the verdict. `remove`: out of service. `refer-to-manufacturer`: out of service, and only the
 * manufacturer can say more. `clean-and-look-again`: no answer yet; the check stays open until it is looked at again.
 */
export const effectSchema = z.enum(['remove', 'refer-to-manufacturer', 'clean-and-look-again']);
export type Effect = z.infer<typeof effectSchema>;

/**
 * Where a fact comes from: a published source, common practice, a published source quoted from memory, the manufacturer's
 * manual, or the employer's own rule.
 */
export const sourceSchema = z.object({
  mark: z.enum(['published', 'common practice', 'from memory', 'manufacturer', 'employer']),
  citation: z.string(),
});
export type Source = z.infer<typeof sourceSchema>;

export const defectSchema = z.object({
  key: z.string().regex(/^[a-z][a-z-]*$/),
  label: messageSchema,
  effect: effectSchema,
  /** The sentence that goes on the tag; `{position}` stands for the place on the lifeline. */
  reason: messageSchema,
});
export type Defect = z.infer<typeof defectSchema>;

const checkBase = z.object({
  key: z.string().regex(/^[a-z-]+\.[a-zA-Z-]+$/),
  zone: zoneSchema,
  title: messageSchema,
  /** What to do, as an instruction to the hands. */
  instruction: messageSchema,
  /** When it is good, in one sentence. */
  criterion: messageSchema,
  /** Shown where the hand is. */
  caution: messageSchema.optional(),
  source: sourceSchema,
  appliesWhen: z.enum(['always', 'load-indicator-fitted']).default('always'),
});

/** One element of the manufacturer's marking, answered `legible`, `illegible` or `missing`. */
export const markingCheckSchema = checkBase.extend({
  kind: z.literal('marking'),
  element: markingElementSchema,
  reasons: z.object({ illegible: messageSchema, missing: messageSchema }),
});

/** A condition that is good, or has one or more of the listed defects. */
export const conditionCheckSchema = checkBase.extend({
  kind: z.literal('condition'),
  defects: z.array(defectSchema).min(1),
  /** The two large answers, where `Good` and `Defect` would not read well. */
  answers: z.object({ good: messageSchema, defect: messageSchema }).optional(),
  /** True where each finding says how far it is from the hook, in metres along the lifeline. */
  positioned: z.boolean().default(false),
});

/** Full payout: the length that came out is confirmed against the rated length. */
export const payoutCheckSchema = checkBase.extend({
  kind: z.literal('payout-length'),
  reasons: z.object({ short: messageSchema }),
});

/** The diameter of the lifeline, read at places along it and held against the manufacturer's minimum where there is one. */
export const diameterCheckSchema = checkBase.extend({
  kind: z.literal('lifeline-diameter'),
  /** When it is good where the model sheet gives no minimum. */
  criterionWithoutMinimum: messageSchema,
  /** `{diameter}`, `{position}` and `{minimum}` stand for the least reading, its place and the manufacturer's minimum. */
  reasons: z.object({ belowMinimum: messageSchema }),
});

export const checkSchema = z.discriminatedUnion('kind', [
  markingCheckSchema,
  conditionCheckSchema,
  payoutCheckSchema,
  diameterCheckSchema,
]);
export type Check = z.infer<typeof checkSchema>;
export type MarkingCheck = z.infer<typeof markingCheckSchema>;
export type ConditionCheck = z.infer<typeof conditionCheckSchema>;
export type DiameterCheck = z.infer<typeof diameterCheckSchema>;
export type PayoutCheck = z.infer<typeof payoutCheckSchema>;

export const procedureSchema = z
  .object({
    key: z.string(),
    version: z.int().positive(),
    title: messageSchema,
    /** Shown before the walk starts. */
    cautions: z.array(messageSchema),
    checks: z.array(checkSchema).min(1),
  })
  .refine(
    (procedure) => new Set(procedure.checks.map((check) => check.key)).size === procedure.checks.length,
    {
      error: 'Every check key of a procedure must be unique.',
    },
  );
export type Procedure = z.infer<typeof procedureSchema>;

/** What the register knows of a device that decides which checks apply and what they are held against. */
export interface DeviceFacts {
  readonly ratedLengthM: number;
  readonly loadIndicatorFitted: boolean;
  /** Of the lifeline as it is made. */
  readonly lifelineDiameterMm: number;
  /** The manufacturer's; absent where the model sheet gives none. */
  readonly lifelineMinimumDiameterMm?: number | undefined;
}

/** The checks that apply to a device, in the order in which they are walked. */
export const applicableChecks = (procedure: Procedure, facts: DeviceFacts): readonly Check[] =>
  procedure.checks.filter((check) => check.appliesWhen === 'always' || facts.loadIndicatorFitted);
