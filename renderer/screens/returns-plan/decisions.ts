/** A plan of returns as decisions, one for each screen: each shipment, the new devices of each length, what is scrapped, what stays held. */
import type { ReturnPlan } from './plan-job.ts';

export type PlannedChoice = ReturnPlan['choices'][number];
export type PlannedShipment = ReturnPlan['shipments'][number];
export type PlannedOrder = ReturnPlan['orders'][number];

export type Decision =
  | { readonly kind: 'send'; readonly shipment: PlannedShipment; readonly choices: readonly PlannedChoice[] }
  | {
      readonly kind: 'order';
      readonly lengthM: number;
      readonly orders: readonly PlannedOrder[];
      /** Held devices that are replaced by them. */
      readonly choices: readonly PlannedChoice[];
    }
  | { readonly kind: 'scrap'; readonly choices: readonly PlannedChoice[] }
  | { readonly kind: 'undecided'; readonly choices: readonly PlannedChoice[] };

export const decisionsOf = ({ choices, shipments, orders }: ReturnPlan): readonly Decision[] => {
  const lengths = [...new Set(orders.map(({ lengthM }) => lengthM))].sort((one, other) => one - other);
  const ofKind = (kind: 'scrap' | 'undecided'): readonly Decision[] => {
    const these = choices.filter((choice) => choice.kind === kind);
    return these.length === 0 ? [] : [{ kind, choices: these }];
  };
  return [
    ...shipments
      .toSorted((one, other) => one.month - other.month)
      .map((shipment) => ({
        kind: 'send' as const,
        shipment,
        choices: choices.filter(({ id }) => shipment.ids.includes(id)),
      })),
    ...lengths.map((lengthM) => ({
      kind: 'order' as const,
      lengthM,
      orders: orders.filter((order) => order.lengthM === lengthM),
      choices: choices.filter((choice) => choice.kind === 'replace' && choice.device?.lengthM === lengthM),
    })),
    ...ofKind('scrap'),
    ...ofKind('undecided'),
  ];
};
