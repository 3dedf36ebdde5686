/** The cheapest return plan by trying everything: for small instances, with rules of its own and nothing of the planner's. */
import type { ReturnPlanInput } from '../../../src/planning/returns/plan-input.ts';

interface Option {
  readonly month: number;
}

/** All ways to choose one of each list. */
function* combinations<Item>(lists: readonly (readonly Item[])[]): Generator<readonly Item[]> {
  const [first, ...rest] = lists;
  if (first === undefined) {
    yield [];
    return;
  }
  for (const item of first) for (const others of combinations(rest)) yield [item, ...others];
}

/** What the plan costs the planned months, or `undefined` where the needs cannot be met. */
export const cheapestByTrying = (input: ReturnPlanInput): number | undefined => {
  const { months, devices, manufacturers, newDevices, needs } = input;
  const isShared = [...devices, ...newDevices].every(({ lifeMonths }) => lifeMonths !== undefined);
  const shareOf = (life: number | undefined): number =>
    isShared ? Math.min(1, months / Math.max(1, life ?? 1)) : 1;
  const makerOf = (name: string) => manufacturers.find((each) => each.name === name);
  const turnaroundOf = ({ turnaroundMonths, manufacturer }: ReturnPlanInput['devices'][number]) =>
    turnaroundMonths ?? makerOf(manufacturer)?.turnaroundMonths;
  const options = devices.map((device): readonly (Option | undefined)[] => {
    const turnaround = turnaroundOf(device);
    if (!device.repairable || device.repairPrice === undefined || turnaround === undefined)
      return [undefined];
    const going: Option[] = [];
    for (let month = device.availableFrom; month < months; month += 1) {
      const back = month + turnaround;
      if (back < months && back < (device.lifeMonths ?? Infinity)) going.push({ month });
    }
    return [undefined, ...going];
  });
  let best: number | undefined;
  for (const chosen of combinations(options)) {
    let cost = 0;
    for (const maker of manufacturers)
      for (let month = 0; month < months; month += 1) {
        const inside = devices.filter(
          (device, index) => device.manufacturer === maker.name && chosen[index]?.month === month,
        );
        if (inside.length === 0) continue;
        const off = Math.max(
          0,
          ...maker.priceBreaks
            .filter(({ from }) => from <= inside.length)
            .map(({ percentOff }) => percentOff),
        );
        const prices = inside.reduce((sum, each) => sum + each.repairPrice! * shareOf(each.lifeMonths), 0);
        cost += maker.shipmentCost + prices * (1 - off / 100);
      }
    for (const need of needs) {
      const gaps = need.perMonth.map((needed, month) => {
        const back = devices.filter((device, index) => {
          const going = chosen[index];
          if (going === undefined || device.lengthM !== need.lengthM) return false;
          const arrives = going.month + turnaroundOf(device)!;
          return arrives <= month && month < (device.lifeMonths ?? Infinity);
        }).length;
        return needed - (typeof need.ready === 'number' ? need.ready : need.ready[month]!) - back;
      });
      cost += cheapestOrders(
        gaps,
        newDevices.find(({ lengthM }) => lengthM === need.lengthM),
        months,
        shareOf,
      );
    }
    if (cost < (best ?? Infinity)) best = cost;
  }
  return best;
};

const cheapestOrders = (
  gaps: readonly number[],
  offer: ReturnPlanInput['newDevices'][number] | undefined,
  months: number,
  shareOf: (life: number | undefined) => number,
): number => {
  const most = Math.max(0, ...gaps);
  if (most === 0) return 0;
  if (offer === undefined) return Infinity;
  let best = Infinity;
  const counts = Array.from({ length: months }, () => Array.from({ length: most + 1 }, (_, count) => count));
  for (const ordered of combinations(counts)) {
    const isMet = gaps.every((gap, month) => {
      let ready = 0;
      for (const [orderedIn, count] of ordered.entries()) {
        const arrives = orderedIn + offer.leadMonths;
        if (arrives <= month && month < arrives + (offer.lifeMonths ?? Infinity)) ready += count;
      }
      return ready >= gap;
    });
    const bought = ordered.reduce((sum, count) => sum + count, 0);
    if (isMet) best = Math.min(best, bought * offer.price * shareOf(offer.lifeMonths));
  }
  return best;
};
