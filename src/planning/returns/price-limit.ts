/** What price would change the answer: up to which price of its own a device is worth its repair. */
import { optimumOf } from './optimum.ts';
import type { ReturnPlanInput } from './plan-input.ts';
import { problemOf } from './plan-problem.ts';
import type { Solver } from './solver.ts';

export type PriceLimit =
  /** Up to this price its repair is part of a cheapest plan, all else being as it is. */
  | { readonly kind: 'up to'; readonly price: number }
  /** The needs cannot be met without it. */
  | { readonly kind: 'at any price' }
  /** Not even for nothing. */
  | { readonly kind: 'never' };

/** A smaller difference of cost is none. */
const costPrecision = 1e-3;

/**
 * `undefined` where there is no plan, or the device is no part of it. The least cost is concave in the price of one device:
 * it rises by the device's share in it, ever more slowly, until it is what it is without the device. From a price of nothing
 * each step goes along that rise, and so never beyond the limit, which is reached in as many steps as there are plans on the
 * way. All else stays as it is, the price breaks too.
 */
export const priceLimitOf = (input: ReturnPlanInput, id: string, solve: Solver): PriceLimit | undefined => {
  if (input.devices.find((each) => each.id === id)?.repairPrice === undefined) return undefined;
  const share = shareOf(input, id);
  if (share === undefined) return undefined;
  const without = optimumOf(problemOf(withPrice(input, id, undefined)), solve)?.cost;
  if (without === undefined)
    return optimumOf(problemOf(input), solve) === undefined ? undefined : { kind: 'at any price' };
  let price = 0;
  for (;;) {
    const made = optimumOf(problemOf(withPrice(input, id, price)), solve);
    const sending = made?.sendings.find((each) => each.device.id === id);
    const saved = without - (made?.cost ?? without);
    if (sending === undefined || saved < costPrecision) break;
    price += saved / (share * (1 - sending.percentOff / 100) || 1);
  }
  return price === 0 ? { kind: 'never' } : { kind: 'up to', price: Math.round(price * 100) / 100 };
};

/** What the planned months are charged for each unit of the device's price; `undefined` where it is no part of the plan. */
const shareOf = (input: ReturnPlanInput, id: string): number | undefined =>
  problemOf(withPrice(input, id, 1))
    .groups.flatMap(({ classes }) => classes)
    .find(({ devices }) => devices.some((each) => each.id === id))?.charge;

const withPrice = (input: ReturnPlanInput, id: string, price: number | undefined): ReturnPlanInput => ({
  ...input,
  devices: input.devices.map((device) => {
    if (device.id !== id) return device;
    const { repairPrice: _price, ...rest } = device;
    return price === undefined ? rest : { ...rest, repairPrice: price };
  }),
});
