/**
 * The plan as a linear program. Only how many of a group go with a shipment must be whole: given that, which of them is a
 * transport from the prices of the group to its shipments, and a transport of whole numbers has a cheapest answer in whole
 * numbers (Dantzig 1951, from memory). So the solver branches over dozens of numbers where there are hundreds of devices.
 */
import { grouped } from '../../domain/grouped.ts';
import { readyIn } from './plan-input.ts';
import {
  type DeviceGroup,
  isReadyIn,
  type PlanProblem,
  sendingMonths,
  type Tier,
  tiersOf,
} from './plan-problem.ts';
import type { LinearProgram, Row, Term, Unknown } from './solver.ts';

/** That devices of a group go in a month at a price break. */
export interface Slot {
  readonly group: DeviceGroup;
  readonly index: number;
  readonly maker: number;
  readonly month: number;
  readonly place: number;
  readonly tier: Tier;
}

export const sent = ({ index, month, place }: Slot): string => `u_${index}_${month}_${place}`;
/** Of one price, in all months together: what they cost depends on the price break alone. */
const sentAt = ({ index, place }: Slot, price: number): string => `w_${index}_${price}_${place}`;
/** That the shipment goes in which the slot is. */
const shipmentOf = ({ maker, month, place }: Slot): string => `y_${maker}_${month}_${place}`;
export const orders = (offer: number, month: number): string => `n_${offer}_${month}`;
export const short = (need: number, month: number): string => `s_${need}_${month}`;

const monthsOf = ({ months }: PlanProblem): readonly number[] =>
  Array.from({ length: months }, (_, month) => month);

export const slotsOf = (problem: PlanProblem): readonly Slot[] =>
  problem.groups.flatMap((group, index) => {
    const maker = problem.manufacturers.indexOf(group.terms);
    const tiers = tiersOf(group.terms, problem);
    return sendingMonths(group, problem).flatMap((month) =>
      tiers.map((tier, place) => ({ group, index, maker, month, place, tier })),
    );
  });

/** Whether a new one that came in time is there until the end of the plan: then it does not matter how early it came. */
export const outlasts = (
  { leadMonths, lifeMonths }: PlanProblem['offers'][number],
  { months }: PlanProblem,
): boolean => lifeMonths === undefined || leadMonths + lifeMonths >= months;

/** Months in which it may have to be ordered, so that it comes within the plan. */
export const orderMonths = (offer: PlanProblem['offers'][number], problem: PlanProblem): readonly number[] =>
  monthsOf(problem).filter(
    (month) => month + offer.leadMonths < problem.months && (month === 0 || !outlasts(offer, problem)),
  );

const isNewReady = (
  { leadMonths, lifeMonths }: PlanProblem['offers'][number],
  orderedIn: number,
  month: number,
): boolean =>
  month >= orderedIn + leadMonths &&
  month < orderedIn + leadMonths + (lifeMonths ?? Number.POSITIVE_INFINITY);

/** For the least cost; or, where the needs may be missed, for the fewest devices missing. */
export const programOf = (problem: PlanProblem, mayMiss: boolean): LinearProgram => {
  const slots = slotsOf(problem);
  const shipments: Shipments = [...grouped(slots, shipmentOf)];
  const misses = problem.needs.flatMap(({ perMonth }, need) =>
    perMonth.map((needed, month) => ({ name: short(need, month), most: needed, isWhole: true })),
  );
  const rows = [
    ...groupRows(slots),
    ...shipments.flatMap(([name, inside]) => shipmentRows(name, inside)),
    ...oneShipmentRows(shipments),
    ...needRows(problem, slots, mayMiss),
  ];
  return {
    cost: mayMiss ? misses.map(({ name }) => ({ factor: 1, name })) : costOf(problem, slots, shipments),
    rows: rows.filter(({ terms, relation, value }) => terms.length > 0 || relation !== '>=' || value > 0),
    unknowns: [
      ...unknownsOf(slots),
      ...shipments.map(([name]) => ({ name, most: 1, isWhole: true })),
      ...problem.offers.flatMap((offer, place) =>
        orderMonths(offer, problem).map((month) => ({
          name: orders(place, month),
          most: mostNeeded(problem),
          isWhole: true,
        })),
      ),
      ...(mayMiss ? misses : []),
    ],
  };
};

/** By their names, with what may be in them. */
type Shipments = readonly (readonly [string, readonly Slot[]])[];

const mostNeeded = ({ needs }: PlanProblem): number =>
  needs.reduce((most, { perMonth }) => Math.max(most, ...perMonth), 0);

/** The slots of a group at one price break, in whatever month. */
const lanesOf = (slots: readonly Slot[]): readonly (readonly [Slot, ...Slot[]])[] =>
  [...grouped(slots, ({ index, place }) => `${index} ${place}`).values()].flatMap(([first, ...others]) =>
    first === undefined ? [] : [[first, ...others] as const],
  );

/** Of a group of one price, how many go says it all. */
const hasPrices = ({ group }: Slot): boolean => group.classes.length > 1;

const unknownsOf = (slots: readonly Slot[]): readonly Unknown[] => [
  ...slots.map((slot) => ({ name: sent(slot), most: slot.group.size, isWhole: true })),
  ...lanesOf(slots).flatMap(([slot]) =>
    hasPrices(slot)
      ? slot.group.classes.map(({ devices }, price) => ({
          name: sentAt(slot, price),
          most: devices.length,
          isWhole: false,
        }))
      : [],
  ),
];

/**
 * No more devices than there are; those of all prices together are those that go. A device goes at a price break only where
 * there is a shipment with it, for each price by itself, which a solver bounds far better.
 */
const groupRows = (slots: readonly Slot[]): readonly Row[] =>
  [...grouped(slots, ({ group }) => group)].flatMap(([{ classes, size }, ofGroup]): Row[] => {
    const lanes = lanesOf(ofGroup);
    if (classes.length === 1)
      return [
        { terms: ofGroup.map((slot) => ({ factor: 1, name: sent(slot) })), relation: '<=', value: size },
      ];
    return [
      ...classes.map(({ devices }, price) => ({
        terms: lanes.map(([slot]) => ({ factor: 1, name: sentAt(slot, price) })),
        relation: '<=' as const,
        value: devices.length,
      })),
      ...lanes.flatMap((lane): Row[] => [
        {
          terms: [
            ...classes.map((_, price) => ({ factor: 1, name: sentAt(lane[0], price) })),
            ...lane.map((slot) => ({ factor: -1, name: sent(slot) })),
          ],
          relation: '=',
          value: 0,
        },
        ...classes.map(({ devices }, price) => ({
          terms: [
            { factor: 1, name: sentAt(lane[0], price) },
            ...lane.map((slot) => ({ factor: -devices.length, name: shipmentOf(slot) })),
          ],
          relation: '<=' as const,
          value: 0,
        })),
      ]),
    ];
  });

/**
 * As many as the price break asks for, and no more than belong to it; nothing is in a shipment that does not go. One that goes
 * after others had to wait for something in it.
 */
const shipmentRows = (name: string, inside: readonly Slot[]): readonly Row[] => {
  const [first] = inside;
  if (first === undefined) return [];
  const { tier, month } = first;
  const all = inside.map((slot) => ({ factor: 1, name: sent(slot) }));
  const fresh = inside.filter(({ group }) => group.availableFrom === month);
  return [
    { terms: [...all, { factor: -tier.from, name }], relation: '>=', value: 0 },
    { terms: [...all, { factor: -tier.most, name }], relation: '<=', value: 0 },
    ...(fresh.length === inside.length
      ? []
      : [
          {
            terms: [...fresh.map((slot) => ({ factor: 1, name: sent(slot) })), { factor: -1, name }],
            relation: '>=' as const,
            value: 0,
          },
        ]),
    ...inside.map((slot) => ({
      terms: [
        { factor: 1, name: sent(slot) },
        { factor: -slot.group.size, name },
      ],
      relation: '<=' as const,
      value: 0,
    })),
  ];
};

/** A month has one shipment of a manufacturer, at one price break. */
const oneShipmentRows = (shipments: Shipments): readonly Row[] =>
  [...grouped(shipments, ([, [slot]]) => `${slot?.maker} ${slot?.month}`).values()].map((sameMonth) => ({
    terms: sameMonth.map(([name]) => ({ factor: 1, name })),
    relation: '<=' as const,
    value: 1,
  }));

const needRows = (problem: PlanProblem, slots: readonly Slot[], mayMiss: boolean): readonly Row[] =>
  problem.needs.flatMap((need, index) =>
    need.perMonth.map((needed, month): Row => {
      const back = slots.filter(
        ({ group, month: sentIn }) => group.lengthM === need.lengthM && isReadyIn(group, sentIn, month),
      );
      const bought = problem.offers.flatMap((offer, place): Term[] =>
        offer.lengthM !== need.lengthM
          ? []
          : orderMonths(offer, problem)
              .filter((orderedIn) => isNewReady(offer, orderedIn, month))
              .map((orderedIn) => ({ factor: 1, name: orders(place, orderedIn) })),
      );
      return {
        terms: [
          ...back.map((slot) => ({ factor: 1, name: sent(slot) })),
          ...bought,
          ...(mayMiss ? [{ factor: 1, name: short(index, month) }] : []),
        ],
        relation: '>=',
        value: needed - readyIn(need, month),
      };
    }),
  );

const costOf = (problem: PlanProblem, slots: readonly Slot[], shipments: Shipments): readonly Term[] => [
  ...lanesOf(slots).flatMap((lane) => {
    const [{ group, tier }] = lane;
    const paid = (charge: number): number => charge * (1 - tier.percentOff / 100);
    return group.classes.flatMap(({ charge }, price) =>
      (hasPrices(lane[0]) ? [sentAt(lane[0], price)] : lane.map(sent)).map((name) => ({
        factor: paid(charge),
        name,
      })),
    );
  }),
  ...shipments.flatMap(([name, [slot]]) =>
    slot === undefined ? [] : [{ factor: slot.group.terms.shipmentCost, name }],
  ),
  ...problem.offers.flatMap((offer, place) =>
    orderMonths(offer, problem).map((month) => ({ factor: offer.charge, name: orders(place, month) })),
  ),
];
