/** The cheapest plan: which devices to send in which shipments, and which new ones to order when. */
import { grouped } from '../../domain/grouped.ts';
import { type HeldDevice, readyIn } from './plan-input.ts';
import { type DeviceGroup, isReadyIn, type PlanProblem } from './plan-problem.ts';
import { orderMonths, orders, outlasts, programOf, type Slot, sent, short, slotsOf } from './plan-program.ts';
import { earliest } from './send-early.ts';
import type { Optimum, Solver } from './solver.ts';

/** One device in one shipment. */
export interface Sending {
  readonly device: HeldDevice;
  readonly of: DeviceGroup;
  readonly month: number;
  readonly percentOff: number;
}

export interface Order {
  readonly lengthM: number;
  readonly month: number;
  readonly count: number;
}

export interface Optimal {
  /** What it costs the planned months. */
  readonly cost: number;
  /** The cheapest plan there can be costs at most this share less; 0 where this is the cheapest. */
  readonly within: number;
  readonly sendings: readonly Sending[];
  readonly orders: readonly Order[];
}

export interface Shortfall {
  readonly lengthM: number;
  readonly month: number;
  readonly needed: number;
  /** As many as can be there at best. */
  readonly most: number;
}

/** `undefined` where the needs cannot be met, whatever is sent and ordered. */
export const optimumOf = (problem: PlanProblem, solve: Solver): Optimal | undefined => {
  const optimum = solve(programOf(problem, false));
  if (optimum === undefined) return undefined;
  const counted = slotsOf(problem).map((slot) => ({ slot, count: optimum.value(sent(slot)) }));
  const sendings = earliest([...grouped(counted, ({ slot }) => slot.group).values()].flatMap(sendingsOf));
  return {
    cost: optimum.cost,
    within: optimum.within,
    sendings,
    orders: problem.offers.flatMap((offer, place) =>
      outlasts(offer, problem)
        ? latestOrders(problem, offer, sendings)
        : solvedOrders(problem, offer, place, optimum),
    ),
  };
};

/** Where and by how much the needs are missed at least: the fewest missing devices in all. */
export const shortfallsOf = (problem: PlanProblem, solve: Solver): readonly Shortfall[] => {
  const optimum = solve(programOf(problem, true));
  if (optimum === undefined) return [];
  return problem.needs.flatMap(({ lengthM, perMonth }, need) =>
    perMonth.flatMap((needed, month) => {
      const missing = optimum.value(short(need, month));
      return missing === 0 ? [] : [{ lengthM, month, needed, most: needed - missing }];
    }),
  );
};

/**
 * Which devices of a group go where, the solver having said how many: the cheapest of them, and the dearest of those where
 * most is taken off (the rearrangement inequality). Those that cost the same go in the order given.
 */
const sendingsOf = (
  counted: readonly { readonly slot: Slot; readonly count: number }[],
): readonly Sending[] => {
  const places = counted
    .toSorted(
      (one, other) =>
        other.slot.tier.percentOff - one.slot.tier.percentOff || one.slot.month - other.slot.month,
    )
    .flatMap(({ slot, count }) => Array.from({ length: count }, () => slot));
  const [first] = places;
  if (first === undefined) return [];
  const cheapest = first.group.classes.flatMap(({ devices }) => devices).slice(0, places.length);
  return cheapest.toReversed().flatMap((device, index): Sending[] => {
    const slot = places[index];
    return slot === undefined
      ? []
      : [{ device, of: slot.group, month: slot.month, percentOff: slot.tier.percentOff }];
  });
};

type Offer = PlanProblem['offers'][number];

/** New ones that last until the end of the plan are ordered as late as they can be. */
const latestOrders = (
  problem: PlanProblem,
  { lengthM, leadMonths }: Offer,
  sendings: readonly Sending[],
): readonly Order[] => {
  const need = problem.needs.find((each) => each.lengthM === lengthM);
  if (need === undefined) return [];
  let bought = 0;
  return need.perMonth.flatMap((needed, month): Order[] => {
    const back = sendings.filter(
      ({ of, month: sentIn }) => of.lengthM === lengthM && isReadyIn(of, sentIn, month),
    ).length;
    const count = needed - readyIn(need, month) - back - bought;
    if (count <= 0) return [];
    bought += count;
    return [{ lengthM, month: month - leadMonths, count }];
  });
};

const solvedOrders = (
  problem: PlanProblem,
  offer: Offer,
  place: number,
  optimum: Optimum,
): readonly Order[] =>
  orderMonths(offer, problem)
    .map((month) => ({ lengthM: offer.lengthM, month, count: optimum.value(orders(place, month)) }))
    .filter(({ count }) => count > 0);
