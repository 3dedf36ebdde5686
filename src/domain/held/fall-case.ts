/** A fall case: what is known of a fall or impact, who was told, where the evidence lies, and what the investigation found. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema, instantSchema } from '../brand.ts';
import { documentFileSchema } from './evidence.ts';

const line = z.string().trim().max(200);

/** Everything may be added later; what is absent is not known yet. */
export const fallFactsSchema = z.object({
  /** When it happened. */
  happenedOn: calendarDateSchema.optional(),
  /** Who wore it: a person's ID. */
  userId: z.string().optional(),
  job: line.optional(),
  /** How the load or impact indicator stood. */
  indicator: z.enum(['deployed', 'not deployed', 'not fitted', 'not clear']).optional(),
  /** Who is to be told, or was, in words. */
  informed: line.optional(),
  /** The number of the sealed bag: the chain of custody. */
  bagNumber: line.optional(),
  account: z.string().trim().max(2000).optional(),
});
export type FallFacts = z.infer<typeof fallFactsSchema>;

export const fallCaseSchema = z.object({
  kind: z.literal('fall case'),
  /** Counts up over the station, from 1. */
  number: z.int().positive(),
  phase: z.enum(['open', 'closed']),
  openedBy: z.string(),
  openedOn: calendarDateSchema,
  facts: fallFactsSchema,
  /** The device that arrested the fall first; the others were in the same system. */
  devices: z.array(benchIdSchema),
  photos: z.array(documentFileSchema),
  /** The bag numbers, one after the other: who sealed it when. */
  custody: z.array(z.object({ bagNumber: z.string(), by: z.string(), at: instantSchema })),
  closed: z.object({ by: z.string(), on: calendarDateSchema, findings: z.string() }).optional(),
});
export type FallCase = z.infer<typeof fallCaseSchema>;
