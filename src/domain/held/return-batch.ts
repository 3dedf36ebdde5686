/** A batch of held devices that go to their manufacturer together, and what the manufacturer says it can repair. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../brand.ts';
import { certificateSchema } from './evidence.ts';

export const returnOutcomes = ['repaired', 'marked again', 'not repaired', 'condemned'] as const;
/** What became of a device at its manufacturer. */
export const returnOutcomeSchema = z.enum(returnOutcomes);
export type ReturnOutcome = z.infer<typeof returnOutcomeSchema>;

export const contaminationSchema = z.enum(['none known', 'cleaned', 'contaminated']);

export const shipmentSchema = z.object({
  carrier: z.string().trim().min(1).max(120),
  consignment: z.string().trim().min(1).max(120).optional(),
  /** When the manufacturer is asked how it stands. */
  followUpOn: calendarDateSchema,
  /** What the declaration to the manufacturer says of every device in the batch. */
  condition: z.string().trim().min(1).max(300),
  contamination: contaminationSchema,
});
export type Shipment = z.infer<typeof shipmentSchema>;

const backSchema = z.object({
  on: calendarDateSchema,
  by: z.string(),
  outcome: returnOutcomeSchema,
  certificate: certificateSchema.optional(),
});

export const returnBatchSchema = z.object({
  kind: z.literal('return batch'),
  /** Counts up over the station, from 1. */
  number: z.int().positive(),
  phase: z.enum(['open', 'shipped', 'closed']),
  manufacturer: z.string(),
  openedBy: z.string(),
  openedOn: calendarDateSchema,
  devices: z.array(z.object({ benchId: benchIdSchema, back: backSchema.optional() })),
  shipped: shipmentSchema.extend({ on: calendarDateSchema, by: z.string() }).optional(),
  followUps: z.array(
    z.object({ on: calendarDateSchema, by: z.string(), note: z.string(), nextOn: calendarDateSchema }),
  ),
});
export type ReturnBatch = z.infer<typeof returnBatchSchema>;

/** The manufacturer's answer to: is this model repairable, for how much, how long does it take? */
export const repairTermsSchema = z.object({
  /** What the manufacturer said; `ask each time` where it decides by what it sees. */
  repairable: z.enum(['yes', 'no', 'ask each time']),
  /** Of one device, in the money of the station. */
  price: z.number().nonnegative().max(1_000_000).optional(),
  leadTimeDays: z.int().min(0).max(1000).optional(),
  /** What names the quote: a number, a letter. */
  quote: z.string().trim().min(1).max(120).optional(),
  validUntil: calendarDateSchema.optional(),
});
/** What the manufacturer asks for one device, having seen it or been told of it; it wins over the price of its model. */
export const deviceQuoteSchema = repairTermsSchema
  .omit({ repairable: true })
  .extend({ price: z.number().nonnegative().max(1_000_000) });
export const recordedDeviceQuoteSchema = deviceQuoteSchema.extend({
  kind: z.literal('device quote'),
  benchId: benchIdSchema,
  on: calendarDateSchema,
  by: z.string(),
});
export type RecordedDeviceQuote = z.infer<typeof recordedDeviceQuoteSchema>;

export const recordedRepairTermsSchema = repairTermsSchema.extend({
  kind: z.literal('repair terms'),
  modelSheetId: z.string(),
  on: calendarDateSchema,
  by: z.string(),
});
export type RecordedRepairTerms = z.infer<typeof recordedRepairTermsSchema>;
