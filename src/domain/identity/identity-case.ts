/** A case of "who is this?": what was seen on a device, who it may be, who proposed that, and who looked and agreed. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../brand.ts';
import { observationSchema, observedFields } from './observation.ts';

export const weighedCandidateSchema = z.object({
  benchId: benchIdSchema,
  /** log2 of the odds of this device against none of these. */
  weight: z.number(),
  probability: z.number(),
  /** What each fact adds to that, in bits, in the order in which they are counted. */
  evidence: z.array(z.object({ field: z.enum(observedFields), weight: z.number() })),
});
export type WeighedCandidate = z.infer<typeof weighedCandidateSchema>;

/** The ranking on which the case rests, as it was when the case was opened. */
export const caseRankingSchema = z.object({
  /** The likeliest first. */
  candidates: z.array(weighedCandidateSchema),
  noneProbability: z.number(),
  /** What every candidate starts with before any fact. */
  startWeight: z.number(),
  weighed: z.int().nonnegative(),
});
export type CaseRanking = z.infer<typeof caseRankingSchema>;

/** How many candidates a case names: as many as a person can compare with the device. */
export const candidatesInCase = 5;

export const placeSchema = z.string().trim().min(1).max(120);

export const identityCaseSchema = z.object({
  /** Counts up over the station, from 1. */
  identityCase: z.int().positive(),
  openedBy: z.string(),
  openedOn: calendarDateSchema,
  observation: observationSchema,
  ranking: caseRankingSchema,
  /** Where the device lies until it is known who it is. */
  keptAt: placeSchema,
  state: z.enum(['open', 'proposed', 'taken', 'unidentified']),
  proposal: z.object({ benchId: benchIdSchema, by: z.string(), on: calendarDateSchema }).optional(),
  /** Who looked at the device and did not agree. */
  disagreements: z.array(
    z.object({
      benchId: benchIdSchema,
      proposedBy: z.string(),
      by: z.string(),
      on: calendarDateSchema,
      why: z.string(),
    }),
  ),
  closed: z.object({ by: z.string(), on: calendarDateSchema }).optional(),
});
export type IdentityCase = z.infer<typeof identityCaseSchema>;

/** That a device is taken for this one because two people said so, and not because its marking says so. */
export const presumedIdentitySchema = z.object({
  identityCase: z.int().positive(),
  proposedBy: z.string(),
  confirmedBy: z.string(),
  on: calendarDateSchema,
});
export type PresumedIdentity = z.infer<typeof presumedIdentitySchema>;
