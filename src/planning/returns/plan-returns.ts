/** What to send together and when, what to replace, what to scrap: the cheapest plan, with a reason for every choice. */
import { grouped } from '../../domain/grouped.ts';
import { faultsOfInput, type InputFault, type MissingData, missingIn } from './missing-data.ts';
import {
  type Optimal,
  type Order,
  optimumOf,
  type Sending,
  type Shortfall,
  shortfallsOf,
} from './optimum.ts';
import type { ReturnPlanInput } from './plan-input.ts';
import { type PlanProblem, problemOf } from './plan-problem.ts';
import type { Solver } from './solver.ts';

export type Choice =
  /** Goes with the shipment of the month to its manufacturer. */
  | {
      readonly kind: 'repair';
      readonly id: string;
      readonly month: number;
      /** Of the quote or the model sheet, and after the price break. */
      readonly price: number;
      readonly pays: number;
    }
  /** A new one of its length is ordered in the month, and it is scrapped. */
  | { readonly kind: 'replace'; readonly id: string; readonly month: number; readonly pays: number }
  /** Not needed for anything that is planned, or not worth its repair. */
  | { readonly kind: 'scrap'; readonly id: string }
  /** Something is missing: it stays held. */
  | { readonly kind: 'undecided'; readonly id: string };

export interface Shipment {
  readonly manufacturer: string;
  readonly month: number;
  readonly ids: readonly string[];
  readonly percentOff: number;
  readonly shipmentCost: number;
  /** What the manufacturer charges for the repairs. */
  readonly repairs: number;
}

export interface ReturnPlan {
  readonly kind: 'plan';
  readonly currency: string;
  /** Everything that is paid: repairs, shipments, new devices. */
  readonly total: number;
  /** What the planned months are charged with, where prices count by the share of the life that is used. */
  readonly charged: number;
  /** The cheapest plan there can be is charged at most this share less; 0 where this is the cheapest. */
  readonly within: number;
  readonly shipments: readonly Shipment[];
  /** Every new device, those that replace a held one among them. */
  readonly orders: readonly Order[];
  /** New devices beyond those that replace a held one. */
  readonly extraOrders: readonly Order[];
  /** One for each held device, in the order given. */
  readonly choices: readonly Choice[];
  /** What the same repairs would cost if each device went by itself; absent where none is repaired. */
  readonly oneByOne?: number;
  /** What it would cost to order a new one for each that is repaired or replaced; absent where a price is missing. */
  readonly replaceAll?: number;
  /** Where the needs cannot be met, whatever is sent and ordered; the plan is for the most that can be. */
  readonly shortfalls: readonly Shortfall[];
  readonly missing: readonly MissingData[];
}

export interface NoPlan {
  readonly kind: 'no plan';
  /** What contradicts itself in what was given. */
  readonly faults: readonly InputFault[];
  /** Where the needs cannot be met, and how far they can. */
  readonly shortfalls: readonly Shortfall[];
  readonly missing: readonly MissingData[];
}

export const planReturns = (input: ReturnPlanInput, solve: Solver): ReturnPlan | NoPlan => {
  const faults = faultsOfInput(input);
  const missing = missingIn(input);
  if (faults.length > 0) return { kind: 'no plan', faults, shortfalls: [], missing };
  const problem = problemOf(input);
  const optimum = optimumOf(problem, solve);
  if (optimum === undefined)
    return { kind: 'no plan', faults, shortfalls: shortfallsOf(problem, solve), missing };
  return { ...planFrom(input, problem, optimum), missing };
};

const planFrom = (
  input: ReturnPlanInput,
  problem: PlanProblem,
  { cost, within, sendings, orders }: Optimal,
): Omit<ReturnPlan, 'missing'> => {
  const sent = new Map(sendings.map((each) => [each.device.id, each]));
  const shipments = shipmentsOf(input, sent);
  const plannable = new Set(
    problem.groups.flatMap(({ classes }) => classes.flatMap(({ devices }) => devices.map(({ id }) => id))),
  );
  const needed = new Set(input.needs.map(({ lengthM }) => lengthM));
  const priceOf = new Map(input.newDevices.map(({ lengthM, price }) => [lengthM, price]));
  const waiting = orders.flatMap(({ lengthM, month, count }) =>
    Array.from({ length: count }, () => ({ lengthM, month })),
  );
  const choices = input.devices.map((device): Choice => {
    const { id, lengthM, repairable, repairPrice = 0 } = device;
    const going = sent.get(id);
    if (going !== undefined) {
      const pays = repairPrice * (1 - going.percentOff / 100);
      return { kind: 'repair', id, month: going.month, price: repairPrice, pays };
    }
    if (!plannable.has(id) && (repairable || !needed.has(lengthM))) return { kind: 'undecided', id };
    const place = waiting.findIndex((order) => order.lengthM === lengthM);
    const [order] = place < 0 ? [] : waiting.splice(place, 1);
    return order === undefined
      ? { kind: 'scrap', id }
      : { kind: 'replace', id, month: order.month, pays: priceOf.get(lengthM) ?? 0 };
  });
  const repairs = shipments.reduce((sum, each) => sum + each.repairs + each.shipmentCost, 0);
  const bought = orders.reduce((sum, { lengthM, count }) => sum + (priceOf.get(lengthM) ?? 0) * count, 0);
  const byItself = oneByOne(input, sendings);
  const allNew = replaceAll(input, choices);
  return {
    kind: 'plan',
    currency: input.currency,
    total: repairs + bought,
    charged: cost,
    within,
    shipments,
    orders,
    extraOrders: counted(waiting),
    choices,
    shortfalls: [],
    ...(byItself === undefined ? {} : { oneByOne: byItself + bought }),
    ...(allNew === undefined ? {} : { replaceAll: allNew + priceOfAll(waiting, priceOf) }),
  };
};

const shipmentsOf = (input: ReturnPlanInput, sent: ReadonlyMap<string, Sending>): readonly Shipment[] =>
  input.manufacturers.flatMap(({ name, shipmentCost }) => {
    const going = input.devices
      .map(({ id }) => sent.get(id))
      .filter((each) => each !== undefined)
      .filter(({ of }) => of.terms.name === name);
    return [...grouped(going, ({ month }) => month)]
      .sort(([one], [other]) => one - other)
      .map(([month, inside]) => {
        const percentOff = inside[0]?.percentOff ?? 0;
        const prices = inside.reduce((sum, { device }) => sum + (device.repairPrice ?? 0), 0);
        const repairs = prices * (1 - percentOff / 100);
        const ids = inside.map(({ device }) => device.id);
        return { manufacturer: name, month, ids, percentOff, shipmentCost, repairs };
      });
  });

const oneByOne = (input: ReturnPlanInput, sent: readonly Sending[]): number | undefined => {
  if (sent.length === 0) return undefined;
  const costs = new Map(input.manufacturers.map(({ name, shipmentCost }) => [name, shipmentCost]));
  return sent.reduce(
    (sum, { device }) => sum + (device.repairPrice ?? 0) + (costs.get(device.manufacturer) ?? 0),
    0,
  );
};

const replaceAll = (input: ReturnPlanInput, choices: readonly Choice[]): number | undefined => {
  const priceOf = new Map(input.newDevices.map(({ lengthM, price }) => [lengthM, price]));
  const lengthOf = new Map(input.devices.map(({ id, lengthM }) => [id, lengthM]));
  const prices = choices
    .filter(({ kind }) => kind === 'repair' || kind === 'replace')
    .map(({ id }) => priceOf.get(lengthOf.get(id) ?? 0));
  return prices.reduce<number | undefined>(
    (sum, price) => (sum === undefined || price === undefined ? undefined : sum + price),
    0,
  );
};

const priceOfAll = (
  orders: readonly { readonly lengthM: number }[],
  priceOf: ReadonlyMap<number, number>,
): number => orders.reduce((sum, { lengthM }) => sum + (priceOf.get(lengthM) ?? 0), 0);

/** As many of a length and month as stand there one by one. */
const counted = (
  orders: readonly { readonly lengthM: number; readonly month: number }[],
): ReturnPlan['extraOrders'] => {
  const counts = new Map<string, { lengthM: number; month: number; count: number }>();
  for (const { lengthM, month } of orders) {
    const key = `${lengthM}|${month}`;
    counts.set(key, { lengthM, month, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  return [...counts.values()];
};
