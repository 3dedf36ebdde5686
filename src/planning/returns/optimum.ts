/** The cheapest plan: which devices to send in which shipments, and which new ones to order when. */
import { type DeviceClass, isReadyIn, type PlanProblem, sendingMonths, tiersOf } from './plan-problem.ts';
import type { LinearProgram, Row, Solver, Term } from './solver.ts';

export interface Sending {
  readonly of: DeviceClass;
  readonly month: number;
  readonly percentOff: number;
  readonly count: number;
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

const sent = (index: number, month: number, tier: number): string => `x_${index}_${month}_${tier}`;
const ships = (maker: number, month: number, tier: number): string => `y_${maker}_${month}_${tier}`;
const orders = (offer: number, month: number): string => `n_${offer}_${month}`;
const short = (need: number, month: number): string => `u_${need}_${month}`;

/** `undefined` where the needs cannot be met, whatever is sent and ordered. */
export const optimumOf = (problem: PlanProblem, solve: Solver): Optimal | undefined => {
  const program = programOf(problem, false);
  const optimum = solve(program);
  if (optimum === undefined) return undefined;
  const sendings = everySending(problem).flatMap(({ index, month, tier, percentOff, of }) => {
    const count = optimum.value(sent(index, month, tier));
    return count === 0 ? [] : [{ of, month, percentOff, count }];
  });
  const ordered = problem.offers.flatMap(({ lengthM }, offer) =>
    monthsOf(problem).flatMap((month) => {
      const count = optimum.value(orders(offer, month));
      return count === 0 ? [] : [{ lengthM, month, count }];
    }),
  );
  return { cost: optimum.cost, within: optimum.within, sendings, orders: ordered };
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

const monthsOf = ({ months }: PlanProblem): readonly number[] =>
  Array.from({ length: months }, (_, month) => month);

const everySending = (problem: PlanProblem) =>
  problem.classes.flatMap((of, index) =>
    sendingMonths(of, problem).flatMap((month) =>
      tiersOf(of.terms).map(({ percentOff }, tier) => ({ of, index, month, tier, percentOff })),
    ),
  );

const programOf = (problem: PlanProblem, mayMiss: boolean): LinearProgram => {
  const { classes, manufacturers, offers, needs } = problem;
  const all = everySending(problem);
  const months = monthsOf(problem);
  const total = classes.reduce((sum, { devices }) => sum + devices.length, 0);
  const shippings = manufacturers.flatMap((terms, maker) =>
    months
      .filter((month) => all.some((each) => each.of.terms === terms && each.month === month))
      .map((month) => ({ terms, maker, month })),
  );
  const shipments = shippings.flatMap(({ terms, maker, month }) =>
    tiersOf(terms).map((tier, place) => ({ terms, maker, month, tier, place })),
  );
  const inShipment = (maker: string, month: number, place: number): Term[] =>
    all
      .filter((each) => each.of.terms.name === maker && each.month === month && each.tier === place)
      .map(({ index }) => ({ factor: 1, name: sent(index, month, place) }));
  const rows: Row[] = [
    ...classes.map((of, index) => ({
      terms: all
        .filter((each) => each.of === of)
        .map(({ month, tier }) => ({ factor: 1, name: sent(index, month, tier) })),
      relation: '<=' as const,
      value: of.devices.length,
    })),
    ...shipments.flatMap(({ terms, maker, month, tier, place }): Row[] => {
      const inside = inShipment(terms.name, month, place);
      const shipment = ships(maker, month, place);
      return [
        { terms: [...inside, { factor: -total, name: shipment }], relation: '<=', value: 0 },
        { terms: [...inside, { factor: -tier.from, name: shipment }], relation: '>=', value: 0 },
      ];
    }),
    ...shippings.map(({ terms, maker, month }) => ({
      terms: tiersOf(terms).map((_, place) => ({ factor: 1, name: ships(maker, month, place) })),
      relation: '<=' as const,
      value: 1,
    })),
    // A device is in a shipment only where there is one: for each by itself, which a solver bounds far better.
    ...all.map(({ of, index, month, tier }) => ({
      terms: [
        { factor: 1, name: sent(index, month, tier) },
        { factor: -of.devices.length, name: ships(manufacturers.indexOf(of.terms), month, tier) },
      ],
      relation: '<=' as const,
      value: 0,
    })),
    ...needs.flatMap(({ lengthM, ready, perMonth }, need) =>
      perMonth.map((needed, month) => ({
        terms: [
          ...all
            .filter(({ of, month: sentIn }) => of.lengthM === lengthM && isReadyIn(of, sentIn, month))
            .map((each) => ({ factor: 1, name: sent(each.index, each.month, each.tier) })),
          ...offers.flatMap((offer, place) =>
            offer.lengthM !== lengthM
              ? []
              : months
                  .filter((orderedIn) => isNewReady(offer, orderedIn, month))
                  .map((orderedIn) => ({ factor: 1, name: orders(place, orderedIn) })),
          ),
          ...(mayMiss ? [{ factor: 1, name: short(need, month) }] : []),
        ],
        relation: '>=' as const,
        value: needed - ready,
      })),
    ),
  ];
  const misses = needs.flatMap(({ perMonth }, need) =>
    perMonth.map((needed, month) => ({ name: short(need, month), most: needed })),
  );
  const mostOrders = needs.reduce((most, { perMonth }) => Math.max(most, ...perMonth), 0);
  return {
    cost: mayMiss ? misses.map(({ name }) => ({ factor: 1, name })) : costOf(problem, all, shipments),
    rows: rows.filter(({ terms, relation, value }) => terms.length > 0 || relation !== '>=' || value > 0),
    whole: [
      ...all.map(({ of, index, month, tier }) => ({
        name: sent(index, month, tier),
        most: of.devices.length,
      })),
      ...shipments.map(({ maker, month, place }) => ({ name: ships(maker, month, place), most: 1 })),
      ...offers.flatMap((_, place) =>
        months.map((month) => ({ name: orders(place, month), most: mostOrders })),
      ),
      ...(mayMiss ? misses : []),
    ],
  };
};

const isNewReady = (
  { leadMonths, lifeMonths }: PlanProblem['offers'][number],
  orderedIn: number,
  month: number,
): boolean =>
  month >= orderedIn + leadMonths &&
  month < orderedIn + leadMonths + (lifeMonths ?? Number.POSITIVE_INFINITY);

const costOf = (
  { offers, months }: PlanProblem,
  all: ReturnType<typeof everySending>,
  shipments: readonly { terms: { shipmentCost: number }; maker: number; month: number; place: number }[],
): readonly Term[] => [
  ...all.map(({ of, index, month, tier, percentOff }) => ({
    factor: of.charge * (1 - percentOff / 100),
    name: sent(index, month, tier),
  })),
  ...shipments.map(({ terms, maker, month, place }) => ({
    factor: terms.shipmentCost,
    name: ships(maker, month, place),
  })),
  ...offers.flatMap(({ charge }, place) =>
    Array.from({ length: months }, (_, month) => ({ factor: charge, name: orders(place, month) })),
  ),
];
