/** A return plan in sentences: one for every choice, what is saved, what is missing, and what price would change the answer. */
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { benchIdSchema } from '../../domain/brand.ts';
import type { Shortfall } from '../../planning/returns/optimum.ts';
import type { Choice, NoPlan, ReturnPlan, Shipment } from '../../planning/returns/plan-returns.ts';
import type { PriceLimit } from '../../planning/returns/price-limit.ts';
import type { PlannedReturns } from './planned-returns.ts';
import type { LostWhy } from './record-input.ts';
import { apartSentence, missingSentence } from './record-words.ts';
import type { ReturnsKey, ReturnsText } from './returns-text.ts';

/** Every sentence of an answer, in the order in which a person reads it. */
export const planSentences = (planned: PlannedReturns, text: ReturnsText): readonly string[] => {
  const { plan } = planned.answer;
  return [
    ...(plan.kind === 'plan'
      ? [
          ...plan.choices.map((choice) => choiceSentence(choice, plan, planned, text)),
          ...plan.shipments.map((shipment) => shipmentSentence(shipment, text)),
          ...orderSentences(plan, text),
          ...summarySentences(plan, text),
        ]
      : noPlanSentences(plan, text)),
    ...shortfallSentences(plan, text),
    ...missingSentences(planned, text),
    ...(planned.recorded?.apart ?? []).map(({ row, why }) => apartSentence(row, why, text)),
    ...planned.answer.limits.flatMap(({ id, limit }) => limitSentence(id, limit, planned, text) ?? []),
  ];
};

/** A bench ID as people read it; what a file calls a device as it stands there. */
const named = (id: string, { recorded }: PlannedReturns): string => {
  const benchId = benchIdSchema.safeParse(id);
  return recorded !== undefined && benchId.success ? formatBenchId(benchId.data) : id;
};

export const choiceSentence = (
  choice: Choice,
  { shipments }: ReturnPlan,
  planned: PlannedReturns,
  text: ReturnsText,
): string => {
  const id = named(choice.id, planned);
  const device = planned.input.devices.find((each) => each.id === choice.id);
  const length = text.length(device?.lengthM ?? 0);
  const why = lostWords(device?.repairable ?? true, planned.recorded?.lost.get(choice.id), text);
  switch (choice.kind) {
    case 'repair': {
      const shipment = shipments.find(({ ids }) => ids.includes(choice.id));
      const others = (shipment?.ids.length ?? 1) - 1;
      return text.said(others === 0 ? 'repair-alone' : 'repair', {
        id,
        manufacturer: device?.manufacturer ?? '',
        month: text.month(choice.month),
        others,
        pays: text.money(choice.pays),
      });
    }
    case 'replace': {
      const values = { id, length, month: text.month(choice.month), pays: text.money(choice.pays) };
      return why === undefined ? text.said('replace', values) : text.said('replace-lost', { ...values, why });
    }
    case 'scrap':
      return why === undefined
        ? text.said('scrap', { id, length })
        : text.said('scrap-lost', { id, length, why });
    case 'undecided':
      return why === undefined ? text.said('undecided', { id }) : text.said('undecided-lost', { id, why });
  }
};

const lostWords = (
  isRepairable: boolean,
  why: LostWhy | undefined,
  text: ReturnsText,
): string | undefined => {
  if (isRepairable) return undefined;
  const keys = {
    condemned: 'why-condemned',
    'not repairable': 'why-not-repairable',
    'life over': 'why-life-over',
    'sent back': 'why-sent-back',
  } as const satisfies Record<LostWhy, ReturnsKey>;
  return text.said(keys[why ?? 'not repairable']);
};

export const shipmentSentence = (shipment: Shipment, text: ReturnsText): string =>
  text.said(shipment.percentOff === 0 ? 'shipment-full-price' : 'shipment', {
    month: text.monthFirst(shipment.month),
    count: shipment.ids.length,
    manufacturer: shipment.manufacturer,
    repairs: text.money(shipment.repairs),
    percentOff: shipment.percentOff,
    shipmentCost: text.money(shipment.shipmentCost),
  });

/** What is ordered besides those that replace a held device. */
export const orderSentences = ({ extraOrders }: ReturnPlan, text: ReturnsText): readonly string[] =>
  extraOrders.map(({ lengthM, month, count }) =>
    text.said('extra-order', { month: text.monthFirst(month), count, length: text.length(lengthM) }),
  );

/** What it costs, and what that saves. */
export const summarySentences = (
  { total, charged, within, oneByOne, replaceAll }: ReturnPlan,
  text: ReturnsText,
): readonly string[] => {
  const compared = (key: ReturnsKey, amount: number | undefined): string[] =>
    amount === undefined
      ? []
      : [text.said(key, { amount: text.money(amount), saved: text.money(amount - total) })];
  return [
    text.said('total', { total: text.money(total) }),
    ...(Math.abs(charged - total) < 0.005 ? [] : [text.said('charged', { charged: text.money(charged) })]),
    ...(within === 0 ? [] : [text.said('within', { percent: within * 100 })]),
    ...compared('one-by-one', oneByOne),
    ...compared('replace-all', replaceAll),
  ];
};

export const noPlanSentences = ({ faults }: NoPlan, text: ReturnsText): readonly string[] => [
  text.said('no-plan'),
  ...faults.map((fault) =>
    fault.kind === 'months'
      ? text.said('fault-months', { length: text.length(fault.lengthM), months: fault.months })
      : text.said('fault-twice', { what: fault.what }),
  ),
];

/** Months in a row of which the same is to be said are said together. */
export const shortfallSentences = (
  { shortfalls }: Pick<NoPlan, 'shortfalls'>,
  text: ReturnsText,
): readonly string[] => {
  const runs: { first: Shortfall; last: number }[] = [];
  for (const each of shortfalls) {
    const run = runs.at(-1);
    const { lengthM, needed, most } = run?.first ?? {};
    const isSame = lengthM === each.lengthM && needed === each.needed && most === each.most;
    if (run !== undefined && isSame && run.last === each.month - 1) run.last = each.month;
    else runs.push({ first: each, last: each.month });
  }
  return runs.map(({ first: { lengthM, month, needed, most }, last }) =>
    text.said('shortfall', {
      length: text.length(lengthM),
      month: month === last ? text.monthFirst(month) : `${text.monthFirst(month)} – ${text.month(last)}`,
      needed,
      most,
    }),
  );
};

/** From the record once for each model, manufacturer and length; from a file device by device. */
export const missingSentences = (
  { recorded, answer }: PlannedReturns,
  text: ReturnsText,
): readonly string[] =>
  recorded === undefined
    ? answer.plan.missing.map((missing) => missingLine(missing, text))
    : recorded.missing.map((missing) => missingSentence(missing, text));

const missingLine = (missing: ReturnPlan['missing'][number], text: ReturnsText): string => {
  switch (missing.kind) {
    case 'repair price':
      return text.said('missing-repair-price', { id: missing.id });
    case 'manufacturer':
      return text.said('missing-manufacturer', { id: missing.id, manufacturer: missing.manufacturer });
    case 'turnaround':
      return text.said('missing-turnaround', { id: missing.id });
    case 'new device':
      return text.said('missing-new-device', { length: text.length(missing.lengthM) });
    case 'need':
      return text.said('missing-need', { length: text.length(missing.lengthM) });
    case 'service life':
      return text.said('missing-service-life');
  }
};

/** Absent where the device is no part of the plan. */
export const limitSentence = (
  id: string,
  limit: PriceLimit | undefined,
  planned: PlannedReturns,
  text: ReturnsText,
): string | undefined => {
  switch (limit?.kind) {
    case undefined:
      return undefined;
    case 'up to':
      return text.said('limit-up-to', { id: named(id, planned), price: text.money(limit.price) });
    case 'at any price':
      return text.said('limit-at-any-price', { id: named(id, planned) });
    case 'never':
      return text.said('limit-never', { id: named(id, planned) });
  }
};
