/** What can happen to a device that is held: evidence, fall cases, the way to the manufacturer and back, release, scrap. */
import { z } from 'zod';
import { benchIdSchema } from './brand.ts';
import { event } from './event-shape.ts';
import { certificateSchema, documentFileSchema, evidenceEntrySchema } from './held/evidence.ts';
import { fallFactsSchema } from './held/fall-case.ts';
import {
  deviceQuoteSchema,
  repairTermsSchema,
  returnOutcomeSchema,
  shipmentSchema,
} from './held/return-batch.ts';
import { returnsBasisSchema } from './held/returns-basis.ts';
import { whySchema } from './person-event.ts';

const benchId = benchIdSchema;
const number = z.int().positive();

export const heldEvents = [
  event('evidence.recorded', { benchId, ...evidenceEntrySchema.shape }),
  /** A second person looked at the device and agrees with what was written. */
  event('evidence.confirmed', { benchId, evidence: number }),
  event('evidence.withdrawn', { benchId, evidence: number, because: whySchema }),
  /** Back to the bench: the tag with this number was scanned back in and is destroyed. It is out of service all the same. */
  event('device.released', {
    benchId,
    tagNumber: number,
    rules: z.object({ key: z.string(), version: number }),
  }),
  /** Its lifeline is cut and its marking defaced, before a witness. Final. */
  event('device.scrapped', {
    benchId,
    lifelineCut: z.literal(true),
    markingDefaced: z.literal(true),
    /** A person's ID. */
    witness: z.string(),
    photos: z.array(documentFileSchema).min(1).max(12),
  }),
  event('fall-case.opened', { fallCase: number, facts: fallFactsSchema }),
  event('fall-case.device-joined', { fallCase: number, benchId }),
  /** What is known besides, or better; what is absent stays as it was. */
  event('fall-case.noted', {
    fallCase: number,
    facts: fallFactsSchema,
    photos: z.array(documentFileSchema).max(12),
  }),
  event('fall-case.closed', { fallCase: number, findings: z.string().trim().min(1).max(4000) }),
  /** Of each device of the case, in the same breath. */
  event('fall-case.device-closed', { fallCase: number, benchId }),
  event('repair-terms.recorded', { modelSheetId: z.string(), terms: repairTermsSchema }),
  event('device-quote.recorded', { benchId, quote: deviceQuoteSchema }),
  /** All of it, as it is from now on. */
  event('returns-basis.recorded', { basis: returnsBasisSchema }),
  event('return-batch.opened', { batch: number, manufacturer: z.string() }),
  event('return-batch.device-added', { batch: number, benchId }),
  event('return-batch.device-taken-out', { batch: number, benchId }),
  event('return-batch.shipped', { batch: number, ...shipmentSchema.shape }),
  /** Of each device of the batch, in the same breath: it is at the manufacturer from now on. */
  event('return-batch.device-shipped', { batch: number, benchId }),
  event('return-batch.followed-up', {
    batch: number,
    note: whySchema,
    nextOn: shipmentSchema.shape.followUpOn,
  }),
  /** It is back in the quarantine, or the manufacturer kept it. */
  event('return-batch.device-came-back', {
    batch: number,
    benchId,
    outcome: returnOutcomeSchema,
    certificate: certificateSchema.optional(),
  }),
] as const;

const heldEventSchema = z.discriminatedUnion('type', heldEvents);
export type HeldEvent = z.infer<typeof heldEventSchema>;
