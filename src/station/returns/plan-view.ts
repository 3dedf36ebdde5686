/** The shape in which a return plan is given out. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import type { ReturnPlan } from '../../planning/returns/plan-returns.ts';
import { missingFromRecordSchema } from './missing-from-record.ts';
import {
  choiceSentence,
  limitSentence,
  noPlanSentences,
  orderSentences,
  planSentences,
  shipmentSentence,
  shortfallSentences,
  summarySentences,
} from './plan-words.ts';
import type { PlannedReturns } from './planned-returns.ts';
import { plannedDevice, type RecordedInput } from './record-input.ts';
import { apartSentence, missingSentence } from './record-words.ts';
import type { ReturnsText } from './returns-text.ts';

const plannedDeviceSchema = z.object({
  benchId: benchIdSchema,
  manufacturer: z.string(),
  model: z.string(),
  serial: z.string(),
  lengthM: z.number(),
  /** Where it lies, as far as that was scanned. */
  place: z.string().optional(),
});

const choiceShape = {
  id: z.string(),
  sentence: z.string(),
  /** Where the plan was made from the record. */
  device: plannedDeviceSchema.optional(),
};
const month = z.int();

const choice = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('repair'), month, price: z.number(), pays: z.number(), ...choiceShape }),
  z.object({ kind: z.literal('replace'), month, pays: z.number(), ...choiceShape }),
  z.object({ kind: z.literal('scrap'), ...choiceShape }),
  z.object({ kind: z.literal('undecided'), ...choiceShape }),
]);

const shipment = z.object({
  manufacturer: z.string(),
  month,
  /** The first day of the month. */
  from: z.string(),
  ids: z.array(z.string()),
  percentOff: z.number(),
  shipmentCost: z.number(),
  repairs: z.number(),
  sentence: z.string(),
});

const order = z.object({ lengthM: z.number(), month, from: z.string(), count: z.int() });

export const missingViewSchema = missingFromRecordSchema.extend({ sentence: z.string() });
export const apartViewSchema = z.object({ benchId: benchIdSchema, sentence: z.string() });

/** Months are counted from the first of the plan, which is 0. */
export const returnPlanSchema = z.object({
  /** False where there is no plan that meets the needs, or what was given contradicts itself. */
  found: z.boolean(),
  /** The day on which it was made. */
  from: calendarDateSchema,
  /** Empty where nobody has said which. */
  currency: z.string(),
  total: z.number().optional(),
  /** With prices counted by the share of the service life that the plan uses, where every service life is known. */
  charged: z.number().optional(),
  /** The cheapest plan there can be is charged at most this share less. */
  within: z.number().optional(),
  oneByOne: z.number().optional(),
  replaceAll: z.number().optional(),
  choices: z.array(choice),
  shipments: z.array(shipment),
  /** Every new device, those that replace a held one among them. */
  orders: z.array(order),
  limits: z.array(
    z.object({
      id: z.string(),
      limit: z
        .object({ kind: z.enum(['up to', 'at any price', 'never']), price: z.number().optional() })
        .optional(),
      sentence: z.string().optional(),
    }),
  ),
  /** What is to be bought besides, what it costs and saves, and where the needs are not met. */
  summary: z.array(z.string()),
  shortfalls: z.array(z.string()),
  /** From the record: what is missing, and which held devices are no part of the plan. */
  missing: z.array(missingViewSchema),
  apart: z.array(apartViewSchema),
  /** All of it, for a person. */
  sentences: z.array(z.string()),
});
type ReturnPlanView = z.input<typeof returnPlanSchema>;

export const returnPlanView = (planned: PlannedReturns, text: ReturnsText): ReturnPlanView => {
  const { answer, recorded, from, input } = planned;
  const { plan, limits } = answer;
  return {
    found: plan.kind === 'plan',
    from,
    currency: input.currency,
    ...(plan.kind === 'plan' ? foundView(plan, planned, text) : nothingFound),
    limits: limits.map(({ id, limit }) => {
      const sentence = limitSentence(id, limit, planned, text);
      return {
        id,
        ...(limit === undefined ? {} : { limit }),
        ...(sentence === undefined ? {} : { sentence }),
      };
    }),
    summary: [
      ...(plan.kind === 'plan'
        ? [...orderSentences(plan, text), ...summarySentences(plan, text)]
        : noPlanSentences(plan, text)),
    ],
    shortfalls: [...shortfallSentences(plan, text)],
    ...(recorded === undefined ? { missing: [], apart: [] } : gapsView(recorded, text)),
    sentences: [...planSentences(planned, text)],
  };
};

const nothingFound = { choices: [], shipments: [], orders: [] };

const foundView = (plan: ReturnPlan, planned: PlannedReturns, text: ReturnsText) => {
  const { total, charged, within, oneByOne, replaceAll, choices, shipments, orders } = plan;
  return {
    total,
    charged,
    within,
    ...(oneByOne === undefined ? {} : { oneByOne }),
    ...(replaceAll === undefined ? {} : { replaceAll }),
    choices: choices.map((each) => {
      const row = planned.recorded?.rows.get(each.id);
      return {
        ...each,
        sentence: choiceSentence(each, plan, planned, text),
        ...(row === undefined ? {} : { device: plannedDevice(row) }),
      };
    }),
    shipments: shipments.map((each) => ({
      ...each,
      ids: [...each.ids],
      from: text.firstDay(each.month),
      sentence: shipmentSentence(each, text),
    })),
    orders: orders.map((each) => ({ ...each, from: text.firstDay(each.month) })),
  };
};

/** What the record does not say, and who is no part of a plan from it. */
export const gapsView = (recorded: RecordedInput, text: ReturnsText) => ({
  missing: recorded.missing.map((each) => ({ ...each, sentence: missingSentence(each, text) })),
  apart: recorded.apart.map(({ row, why }) => ({
    benchId: row.device.benchId,
    sentence: apartSentence(row, why, text),
  })),
});
