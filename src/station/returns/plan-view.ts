/** The shape in which a return plan is given out. */
import { z } from 'zod';

const choice = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('repair'),
    id: z.string(),
    month: z.number().int(),
    price: z.number(),
    pays: z.number(),
  }),
  z.object({ kind: z.literal('replace'), id: z.string(), month: z.number().int(), pays: z.number() }),
  z.object({ kind: z.literal('scrap'), id: z.string() }),
  z.object({ kind: z.literal('undecided'), id: z.string() }),
]);

const shipment = z.object({
  manufacturer: z.string(),
  month: z.number().int(),
  ids: z.array(z.string()),
  percentOff: z.number(),
  shipmentCost: z.number(),
  repairs: z.number(),
});

/** Months are counted from the first of the plan, which is 0. */
export const returnPlanSchema = z.object({
  /** False where there is no plan that meets the needs, or what was given contradicts itself. */
  found: z.boolean(),
  total: z.number().optional(),
  /** With prices counted by the share of the service life that the plan uses, where every service life is known. */
  charged: z.number().optional(),
  /** The cheapest plan there can be is charged at most this share less. */
  within: z.number().optional(),
  oneByOne: z.number().optional(),
  replaceAll: z.number().optional(),
  choices: z.array(choice),
  shipments: z.array(shipment),
  limits: z.array(
    z.object({
      id: z.string(),
      limit: z
        .object({ kind: z.enum(['up to', 'at any price', 'never']), price: z.number().optional() })
        .optional(),
    }),
  ),
  /** All of it, for a person. */
  sentences: z.array(z.string()),
});
