/** What the repair-or-replace plan is made of: held devices, prices, manufacturers, and how many ready devices are needed. */
import { z } from 'zod';

const money = z.number().min(0).max(10_000_000);
/** Counted from the first month of the plan, which is 0. */
const month = z.int().min(0).max(23);
/** From the month of the shipment until the devices are ready again; 1 is the month after. */
const turnaroundMonths = z.int().min(0).max(24);
/** How many devices. */
const count = z.int().min(0).max(10_000);

export const heldDeviceSchema = z.object({
  id: z.string().trim().min(1).max(60),
  manufacturer: z.string().trim().min(1).max(80),
  lengthM: z.number().positive().max(200),
  /** False where its manufacturer does not repair it: it can be replaced or scrapped, and nothing is missing. */
  repairable: z.boolean().default(true),
  /** Of a quote for this device, or for its model; absent where nobody has said it. */
  repairPrice: money.optional(),
  /** Of its own model; absent where that of its manufacturer holds. */
  turnaroundMonths: turnaroundMonths.optional(),
  /** The first month in which it can be sent. */
  availableFrom: month.default(0),
  /** Months from the beginning of the plan until its service life ends; absent where no end is stated. */
  lifeMonths: z.int().min(0).max(600).optional(),
});

export const manufacturerTermsSchema = z.object({
  name: z.string().trim().min(1).max(80),
  /** Of each shipment, whatever is in it. */
  shipmentCost: money,
  /** Absent where only single models have one. */
  turnaroundMonths: turnaroundMonths.optional(),
  /** The percentage off the repair prices of a whole shipment of at least so many devices. */
  priceBreaks: z
    .array(z.object({ from: z.int().min(2).max(1000), percentOff: z.number().min(0).max(100) }))
    .max(5)
    .default([]),
});

export const newDeviceSchema = z.object({
  lengthM: z.number().positive().max(200),
  price: money,
  /** Months from the order until it is ready. */
  leadMonths: z.int().min(0).max(24),
  /** Its service life; absent where no end is stated. */
  lifeMonths: z.int().min(1).max(600).optional(),
});

export const needSchema = z.object({
  lengthM: z.number().positive().max(200),
  /** There without anything that is planned: in every month as many, or for each month its own number. */
  ready: z.union([count, z.array(count).min(1).max(24)]),
  /** In each month of the plan: as many as there are months. */
  perMonth: z.array(count).min(1).max(24),
});

export const returnPlanInputSchema = z.object({
  /** One currency for all prices, empty where nobody has said which; nothing is converted. */
  currency: z.string().trim().max(10),
  months: z.int().min(1).max(24),
  devices: z.array(heldDeviceSchema).max(1000),
  manufacturers: z.array(manufacturerTermsSchema).max(50),
  newDevices: z.array(newDeviceSchema).max(50),
  needs: z.array(needSchema).max(50),
});
export type ReturnPlanInput = z.infer<typeof returnPlanInputSchema>;
export type HeldDevice = z.infer<typeof heldDeviceSchema>;
export type ManufacturerTerms = z.infer<typeof manufacturerTermsSchema>;
export type NewDevice = z.infer<typeof newDeviceSchema>;
export type Need = z.infer<typeof needSchema>;

export const readyIn = ({ ready }: Need, month: number): number =>
  typeof ready === 'number' ? ready : (ready[month] ?? 0);
