/** What the depot plans its returns with, as people entered it: what shipments and new devices cost, and how many devices it needs. */
import { z } from 'zod';
import { calendarDateSchema, metresSchema } from '../brand.ts';

const money = z.number().nonnegative().max(1_000_000);
const days = z.int().min(0).max(1000);

/** What a manufacturer asks besides the price of each repair. */
export const makerTermsSchema = z.object({
  manufacturer: z.string().trim().min(1).max(80),
  /** Of each shipment, there and back, whatever is in it. */
  shipmentCost: money,
  /** The percentage off the repairs of a whole shipment of at least so many devices. */
  priceBreaks: z
    .array(z.object({ from: z.int().min(2).max(1000), percentOff: z.number().positive().max(100) }))
    .max(5),
  /** How long a repair takes where nothing is said for the model. */
  turnaroundDays: days.optional(),
});
export type MakerTerms = z.infer<typeof makerTermsSchema>;

/** What the depot needs of one length, and what a new device of that length costs. What nobody knows is absent. */
export const lengthPlanSchema = z.object({
  lengthM: metresSchema.refine((length) => length > 0, { error: 'length' }),
  /** Devices needed in service, by month of the calendar: January first. */
  needed: z.array(z.int().min(0).max(10_000)).length(12).optional(),
  newDevice: z
    .object({
      price: money,
      leadTimeDays: days,
      /** Absent where no end is stated. */
      lifeYears: z.int().min(1).max(50).optional(),
    })
    .optional(),
});
export type LengthPlan = z.infer<typeof lengthPlanSchema>;

export const returnsBasisSchema = z.object({
  /** Of every price of the station; absent until somebody says it. */
  currency: z.string().trim().min(1).max(10).optional(),
  /** How far ahead is planned. */
  months: z.int().min(1).max(24),
  makers: z.array(makerTermsSchema).max(50),
  lengths: z.array(lengthPlanSchema).max(50),
});
export type ReturnsBasis = z.infer<typeof returnsBasisSchema>;

/** As it stands in the record. */
export const recordedReturnsBasisSchema = returnsBasisSchema.extend({
  kind: z.literal('returns basis'),
  on: calendarDateSchema,
  by: z.string(),
});
export type RecordedReturnsBasis = z.infer<typeof recordedReturnsBasisSchema>;

/** Before anybody has said anything: a year ahead (common practice, no source). */
export const emptyReturnsBasis: ReturnsBasis = { months: 12, makers: [], lengths: [] };

/** What is entered at a time; everything else stays as it is. */
export const returnsBasisChangeSchema = z.discriminatedUnion('what', [
  z.object({ what: z.literal('plan'), ...returnsBasisSchema.pick({ currency: true, months: true }).shape }),
  z.object({ what: z.literal('maker'), ...makerTermsSchema.shape }),
  z.object({ what: z.literal('length'), ...lengthPlanSchema.shape }),
]);
export type ReturnsBasisChange = z.infer<typeof returnsBasisChangeSchema>;
