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

/** Of whole plans; a smaller difference of price is not told apart. */
const pricePrecision = 0.01;

/**
 * `undefined` where there is no plan, or the device is no part of it. The cost of the cheapest plan never falls as the price
 * of one device rises, and stays what it is without the device once that is no longer repaired: the limit is the price at
 * which the two meet, found by halving to within a cent. All else stays as it is, the price breaks too.
 */
export const priceLimitOf = (input: ReturnPlanInput, id: string, solve: Solver): PriceLimit | undefined => {
  const costAt = (price: number | undefined): number | undefined =>
    optimumOf(problemOf(withPrice(input, id, price)), solve)?.cost;
  const device = input.devices.find((each) => each.id === id);
  if (device?.repairPrice === undefined) return undefined;
  if (!input.manufacturers.some(({ name }) => name === device.manufacturer)) return undefined;
  if (costAt(device.repairPrice) === undefined) return undefined;
  const without = costAt(undefined);
  if (without === undefined) return { kind: 'at any price' };
  const isWorth = (price: number): boolean => (costAt(price) ?? without) < without - pricePrecision / 10;
  if (!isWorth(0)) return { kind: 'never' };
  let low = 0;
  let high = Math.max(1, device.repairPrice);
  while (isWorth(high)) {
    low = high;
    high *= 2;
  }
  while (high - low > pricePrecision) {
    const middle = (low + high) / 2;
    if (isWorth(middle)) low = middle;
    else high = middle;
  }
  return { kind: 'up to', price: Math.round(high * 100) / 100 };
};

const withPrice = (input: ReturnPlanInput, id: string, price: number | undefined): ReturnPlanInput => ({
  ...input,
  devices: input.devices.map((device) => {
    if (device.id !== id) return device;
    const { repairPrice: _price, ...rest } = device;
    return price === undefined ? rest : { ...rest, repairPrice: price };
  }),
});
