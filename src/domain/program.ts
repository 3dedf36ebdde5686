/** The employer's written rules, as versioned data (`assets/programs/`). They may be stricter than the trade, never weaker. */
import { z } from 'zod';
import { type TypeOfUse, typeOfUseSchema } from './due/type-of-use.ts';
import { strictReleaseSchema } from './held/release-rules.ts';
import { languageSchema, messageSchema } from './message.ts';
import { sourceSchema, zoneSchema } from './procedure.ts';

/** What the trade allows is asked by `programFault`, which answers with a sentence; these are the bounds of sense. */
const months = z.int().min(1).max(120);

const typeOfUseChoice = z.object({ inspectionMonths: months, revalidationMonths: months });

export const jurisdictionSchema = z.object({
  name: messageSchema,
  /** At least two a year is every 6 months. */
  inspectionMonths: months,
  source: sourceSchema,
});

/** Stricter than what holds for everything: for a type of use, for a model, or for both together. */
export const employerRuleSchema = z.object({
  typeOfUse: typeOfUseSchema.optional(),
  modelSheetId: z.string().optional(),
  inspectionMonths: months.optional(),
  revalidationMonths: months.optional(),
  /** In the employer's own words, in their own language. */
  why: z.string().trim().min(1).max(300),
});

/**
 * What follows where a documented inspection was missed: another one, or revalidation by the manufacturer (or disposal).
 * `graceDays` after its due date it counts as missed; the device is overdue meanwhile all the same.
 */
export const missedInspectionSchema = z.object({
  rule: z.enum(['inspect', 'revalidate']),
  graceDays: z.int().min(0).max(60),
});

/** Its key stands in the record as `removal.` and the key. */
export const removalGroundSchema = z.object({
  key: z.string(),
  zone: zoneSchema,
  label: messageSchema,
  reason: messageSchema,
  noteNeeded: z.boolean().default(false),
});
export type RemovalGround = z.infer<typeof removalGroundSchema>;

export const programSchema = z.object({
  key: z.string().regex(/^[a-z0-9][a-z0-9-]{0,39}$/),
  version: z.int().positive(),
  title: messageSchema,
  /** Holds for every device; the only one where nobody has determined the type of use yet. */
  inspectionInterval: z.object({ months, source: sourceSchema }),
  /** What the program chooses within the ranges of the standard; where it is absent the stricter ends count. */
  typesOfUse: z
    .object({
      'infrequent to light': typeOfUseChoice,
      'moderate to heavy': typeOfUseChoice,
      'severe to continuous': typeOfUseChoice,
    } satisfies Record<TypeOfUse, typeof typeOfUseChoice>)
    .optional(),
  jurisdictions: z.array(jurisdictionSchema).max(20).default([]),
  employerRules: z.array(employerRuleSchema).max(200).default([]),
  /** Due dates are the last day of a month, never after the exact date. */
  monthEnd: z.boolean().default(false),
  missedInspection: missedInspectionSchema.default({ rule: 'inspect', graceDays: 0 }),
  /** The longest that a training of a competent person counts; absent where the certificate alone decides. */
  trainingValidityMonths: months.optional(),
  /** Years for which the record of a device is kept after its disposal. Nothing is ever deleted by the program. */
  retentionYears: z.int().min(0).max(100).default(0),
  /** Days after an inspection within which a blind second one begins; the usual ones where it says nothing. */
  reinspectionDays: z.int().min(1).max(60).optional(),
  /** A due date this many days ahead is shown as due soon. */
  dueSoonDays: z.int().min(1).max(366),
  tagLanguages: z.array(languageSchema).min(1),
  /** Where a removed device is kept until its case is closed. */
  quarantinePlace: messageSchema,
  /** The grounds on which anyone takes a device out of service at once, without an inspection. */
  removalGrounds: z.array(removalGroundSchema),
  /** What must exist before a removed device can be inspected for return, whatever the reason. */
  beforeReturn: z.array(messageSchema).min(1),
  /** Where it asks for more before a return than the release rules of the product do. */
  release: z.array(strictReleaseSchema).max(60).optional(),
});
export type Program = z.infer<typeof programSchema>;
