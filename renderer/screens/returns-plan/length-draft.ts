/** What is being entered of one length for the plan of returns, as text, and what is wrong with it. */
import type { Metres } from '../../../src/domain/brand.ts';
import type { LengthPlan } from '../../../src/domain/held/returns-basis.ts';
import { wholeNumber } from '../program/program-draft.ts';
import { amountOf, textOf } from './amounts.ts';

const months = Array.from({ length: 12 }, (_, month) => month);

export interface LengthDraft {
  /** Another number in each month of the calendar. */
  readonly byMonth: boolean;
  readonly always: string;
  /** January first. */
  readonly monthly: readonly string[];
  readonly price: string;
  readonly leadTimeDays: string;
  readonly lifeYears: string;
}

export type LengthFault = 'needed' | 'price' | 'leadTimeDays' | 'lifeYears';

export const lengthDraftOf = (plan: LengthPlan | undefined): LengthDraft => {
  const needed = plan?.needed ?? [];
  const byMonth = new Set(needed).size > 1;
  return {
    byMonth,
    always: byMonth ? '' : textOf(needed[0]),
    monthly: months.map((month) => textOf(needed[month])),
    price: textOf(plan?.newDevice?.price),
    leadTimeDays: textOf(plan?.newDevice?.leadTimeDays),
    lifeYears: textOf(plan?.newDevice?.lifeYears),
  };
};

const count = (text: string): number | undefined => wholeNumber(text, 0, 9999);
const isBlank = (text: string): boolean => text.trim() === '';

/** Nothing need be filled in; but a price and a lead time go together. */
export const lengthFaults = (draft: LengthDraft): ReadonlySet<LengthFault> => {
  const { byMonth, always, monthly, price, leadTimeDays, lifeYears } = draft;
  const hasNew = ![price, leadTimeDays, lifeYears].every(isBlank);
  const isNeedWrong = byMonth
    ? monthly.some((each) => count(each) === undefined)
    : !isBlank(always) && count(always) === undefined;
  return new Set<LengthFault>([
    ...(isNeedWrong ? ['needed' as const] : []),
    ...(hasNew && amountOf(price) === undefined ? ['price' as const] : []),
    ...(hasNew && wholeNumber(leadTimeDays, 0, 1000) === undefined ? ['leadTimeDays' as const] : []),
    ...(!isBlank(lifeYears) && wholeNumber(lifeYears, 1, 50) === undefined ? ['lifeYears' as const] : []),
  ]);
};

/** Of a draft without a fault. */
export const lengthPlanOf = (draft: LengthDraft, lengthM: Metres): LengthPlan => {
  const always = count(draft.always);
  const monthly = draft.monthly.map(count).filter((each) => each !== undefined);
  const needed = draft.byMonth ? monthly : always === undefined ? undefined : months.map(() => always);
  const price = amountOf(draft.price);
  const leadTimeDays = wholeNumber(draft.leadTimeDays, 0, 1000);
  const lifeYears = wholeNumber(draft.lifeYears, 1, 50);
  return {
    lengthM,
    ...(needed === undefined ? {} : { needed }),
    ...(price === undefined || leadTimeDays === undefined
      ? {}
      : { newDevice: { price, leadTimeDays, ...(lifeYears === undefined ? {} : { lifeYears }) } }),
  };
};
