/** A return plan in sentences: one for every choice, what is saved, what is missing, and what price would change the answer. */
import { createInstance } from 'i18next';
import english from '../../../assets/messages/en/returns.json' with { type: 'json' };
import spanish from '../../../assets/messages/es/returns.json' with { type: 'json' };
import type { CalendarDate } from '../../domain/brand.ts';
import { addMonths } from '../../domain/calendar.ts';
import type { Language } from '../../domain/message.ts';
import type { ReturnPlanInput } from '../../planning/returns/plan-input.ts';
import type { Choice, NoPlan, ReturnPlan } from '../../planning/returns/plan-returns.ts';
import type { PlanAnswer } from '../../planning/returns/plan-thread-words.ts';

type Key = keyof typeof english;
type Values = Readonly<Record<string, string | number>>;

const catalogue = createInstance();
await catalogue.init({
  resources: { en: { returns: english }, es: { returns: spanish } },
  defaultNS: 'returns',
  fallbackLng: 'en',
  keySeparator: false,
  nsSeparator: false,
  interpolation: { escapeValue: false },
});

export interface PlanWords {
  readonly language: Language;
  /** The first month of the plan. */
  readonly from: CalendarDate;
  readonly input: ReturnPlanInput;
}

/** Every sentence of an answer, in the order in which a person reads it. */
export const planSentences = ({ plan, limits }: PlanAnswer, words: PlanWords): readonly string[] => [
  ...(plan.kind === 'plan' ? planLines(plan, words) : noPlanLines(plan, words)),
  ...plan.missing.map((missing) => missingLine(missing, words)),
  ...limits.flatMap(({ id, limit }) => {
    if (limit === undefined) return [];
    const key: Key = `limit-${limit.kind === 'up to' ? 'up-to' : limit.kind === 'never' ? 'never' : 'at-any-price'}`;
    return [said(words, key, { id, ...('price' in limit ? { price: money(limit.price, words) } : {}) })];
  }),
];

const said = ({ language }: PlanWords, key: Key, values: Values = {}): string =>
  catalogue.t(key, { ...values, lng: language });

const money = (amount: number, { language, input }: PlanWords): string =>
  `${new Intl.NumberFormat(locale(language), { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(amount)} ${input.currency}`;

const monthText = (month: number, { language, from }: PlanWords): string =>
  new Intl.DateTimeFormat(locale(language), { month: 'long', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${addMonths(from, month).slice(0, 7)}-01T00:00:00Z`),
  );

const locale = (language: Language): string => (language === 'es' ? 'es-ES' : 'en-GB');

const planLines = (plan: ReturnPlan, words: PlanWords): string[] => {
  const { total, charged, within, shipments, extraOrders, choices, oneByOne, replaceAll } = plan;
  const compared = (key: Key, amount: number | undefined): string[] =>
    amount === undefined
      ? []
      : [said(words, key, { amount: money(amount, words), saved: money(amount - total, words) })];
  return [
    ...choices.map((choice) => choiceLine(choice, plan, words)),
    ...shipments.map((each) =>
      said(words, 'shipment', {
        month: monthText(each.month, words),
        count: each.ids.length,
        manufacturer: each.manufacturer,
        repairs: money(each.repairs, words),
        percentOff: each.percentOff,
        shipmentCost: money(each.shipmentCost, words),
      }),
    ),
    ...extraOrders.map(({ lengthM, month, count }) =>
      said(words, 'extra-order', { month: monthText(month, words), count, length: lengthM }),
    ),
    said(words, 'total', { total: money(total, words) }),
    ...(Math.abs(charged - total) < 0.005
      ? []
      : [said(words, 'charged', { charged: money(charged, words) })]),
    ...(within === 0 ? [] : [said(words, 'within', { percent: within * 100 })]),
    ...compared('one-by-one', oneByOne),
    ...compared('replace-all', replaceAll),
  ];
};

const choiceLine = (choice: Choice, { shipments }: ReturnPlan, words: PlanWords): string => {
  const { id } = choice;
  const device = words.input.devices.find((each) => each.id === id);
  const length = device?.lengthM ?? 0;
  switch (choice.kind) {
    case 'repair': {
      const shipment = shipments.find(({ ids }) => ids.includes(id));
      const others = (shipment?.ids.length ?? 1) - 1;
      return said(words, others === 0 ? 'repair-alone' : 'repair', {
        id,
        manufacturer: device?.manufacturer ?? '',
        month: monthText(choice.month, words),
        others,
        pays: money(choice.pays, words),
      });
    }
    case 'replace':
      return said(words, 'replace', {
        id,
        length,
        month: monthText(choice.month, words),
        pays: money(choice.pays, words),
      });
    case 'scrap':
      return said(words, 'scrap', { id, length });
    case 'undecided':
      return said(words, 'undecided', { id });
  }
};

const noPlanLines = ({ faults, shortfalls }: NoPlan, words: PlanWords): string[] => [
  said(words, 'no-plan'),
  ...faults.map((fault) =>
    fault.kind === 'months'
      ? said(words, 'fault-months', { length: fault.lengthM, months: fault.months })
      : said(words, 'fault-twice', { what: fault.what }),
  ),
  ...shortfalls.map(({ lengthM, month, needed, most }) =>
    said(words, 'shortfall', { length: lengthM, month: monthText(month, words), needed, most }),
  ),
];

const missingLine = (missing: ReturnPlan['missing'][number], words: PlanWords): string => {
  switch (missing.kind) {
    case 'repair price':
      return said(words, 'missing-repair-price', { id: missing.id });
    case 'manufacturer':
      return said(words, 'missing-manufacturer', { id: missing.id, manufacturer: missing.manufacturer });
    case 'new device':
      return said(words, 'missing-new-device', { length: missing.lengthM });
    case 'need':
      return said(words, 'missing-need', { length: missing.lengthM });
    case 'service life':
      return said(words, 'missing-service-life');
  }
};
