/** What a plan lacks: it is said, and nothing is put in its place. */
import type { ReturnPlanInput } from './plan-input.ts';

export type MissingData =
  /** Nobody has said what the repair costs: the device stays held, and is no part of the plan. */
  | { readonly kind: 'repair price'; readonly id: string }
  /** The terms of its manufacturer are not there: the same. */
  | { readonly kind: 'manufacturer'; readonly id: string; readonly manufacturer: string }
  /** Nobody has said how long its repair takes: the same. */
  | { readonly kind: 'turnaround'; readonly id: string }
  /** No new device of a length that is needed has a price: none can be bought. */
  | { readonly kind: 'new device'; readonly lengthM: number }
  /** Nobody has said how many of a length are needed: those that are held stay held. */
  | { readonly kind: 'need'; readonly lengthM: number }
  /** Where not every service life is known, whole prices are compared instead of their share in the plan. */
  | { readonly kind: 'service life' };

export type InputFault =
  | { readonly kind: 'months'; readonly lengthM: number; readonly months: number }
  | { readonly kind: 'twice'; readonly what: string };

/** What contradicts itself, and so cannot be planned at all. */
export const faultsOfInput = (input: ReturnPlanInput): readonly InputFault[] => [
  ...input.needs.flatMap(({ lengthM, perMonth, ready }) =>
    [perMonth.length, typeof ready === 'number' ? input.months : ready.length]
      .filter((months) => months !== input.months)
      .map((months) => ({ kind: 'months' as const, lengthM, months })),
  ),
  ...twice(input.devices.map(({ id }) => id)),
  ...twice(input.manufacturers.map(({ name }) => name)),
  ...twice(input.needs.map(({ lengthM }) => `${lengthM} m`)),
  ...twice(input.newDevices.map(({ lengthM }) => `${lengthM} m`)),
];

const twice = (names: readonly string[]): readonly InputFault[] =>
  [...new Set(names.filter((name, index) => names.indexOf(name) !== index))].map((what) => ({
    kind: 'twice' as const,
    what,
  }));

export const missingIn = (input: ReturnPlanInput): readonly MissingData[] => {
  const { devices, manufacturers, newDevices, needs } = input;
  const terms = new Map(manufacturers.map((each) => [each.name, each]));
  const needed = new Set(needs.map(({ lengthM }) => lengthM));
  const sold = new Set(newDevices.map(({ lengthM }) => lengthM));
  const held = new Set(devices.map(({ lengthM }) => lengthM));
  return [
    ...devices.flatMap(({ id, manufacturer, repairable, repairPrice, turnaroundMonths }): MissingData[] => {
      if (!repairable) return [];
      if (repairPrice === undefined) return [{ kind: 'repair price', id }];
      const ofMaker = terms.get(manufacturer);
      if (ofMaker === undefined) return [{ kind: 'manufacturer', id, manufacturer }];
      return turnaroundMonths === undefined && ofMaker.turnaroundMonths === undefined
        ? [{ kind: 'turnaround', id }]
        : [];
    }),
    ...[...needed]
      .filter((lengthM) => !sold.has(lengthM))
      .map((lengthM) => ({ kind: 'new device' as const, lengthM })),
    ...[...held]
      .filter((lengthM) => !needed.has(lengthM))
      .map((lengthM) => ({ kind: 'need' as const, lengthM })),
    ...(knowsEveryLife(input) ? [] : [{ kind: 'service life' as const }]),
  ];
};

export const knowsEveryLife = ({ devices, newDevices }: ReturnPlanInput): boolean =>
  devices.every(({ lifeMonths }) => lifeMonths !== undefined) &&
  newDevices.every(({ lifeMonths }) => lifeMonths !== undefined);
