/** The plan as a problem for the solver: what may be chosen, what it costs, and when what is ready. */
import { knowsEveryLife } from './missing-data.ts';
import type { HeldDevice, ManufacturerTerms, NewDevice, ReturnPlanInput } from './plan-input.ts';

/** Devices that are alike in everything that the plan asks. */
export interface DeviceClass {
  readonly devices: readonly HeldDevice[];
  readonly terms: ManufacturerTerms;
  readonly lengthM: number;
  /** What the repair of one costs the planned months, before any price break. */
  readonly charge: number;
  readonly availableFrom: number;
  readonly lifeMonths: number;
}

/** A price break, or none: `from` 1 and nothing off. */
export interface Tier {
  readonly from: number;
  readonly percentOff: number;
}

export interface PlanProblem {
  readonly months: number;
  readonly classes: readonly DeviceClass[];
  readonly manufacturers: readonly ManufacturerTerms[];
  /** What one new device costs the planned months. */
  readonly offers: readonly (NewDevice & { readonly charge: number })[];
  readonly needs: ReturnPlanInput['needs'];
}

const forever = Number.POSITIVE_INFINITY;

/**
 * Where every service life is known, a price is charged by the share of the life that the plan uses: what lasts half as long
 * costs twice as much a month. Where one is not, whole prices are compared.
 */
export const problemOf = (input: ReturnPlanInput): PlanProblem => {
  const { months } = input;
  const byShare = knowsEveryLife(input);
  const share = (lifeMonths: number | undefined): number =>
    byShare && lifeMonths !== undefined ? Math.min(1, months / Math.max(1, lifeMonths)) : 1;
  const terms = new Map(input.manufacturers.map((each) => [each.name, each]));
  const classes = new Map<string, DeviceClass>();
  for (const device of input.devices) {
    const { manufacturer, lengthM, repairPrice, availableFrom, lifeMonths } = device;
    const ofMaker = terms.get(manufacturer);
    if (ofMaker === undefined || repairPrice === undefined) continue;
    const key = [manufacturer, lengthM, repairPrice, availableFrom, lifeMonths].join('|');
    const known = classes.get(key);
    classes.set(key, {
      devices: [...(known?.devices ?? []), device],
      terms: ofMaker,
      lengthM,
      charge: repairPrice * share(lifeMonths),
      availableFrom,
      lifeMonths: lifeMonths ?? forever,
    });
  }
  return {
    months,
    classes: [...classes.values()],
    manufacturers: input.manufacturers,
    offers: input.newDevices.map((offer) => ({ ...offer, charge: offer.price * share(offer.lifeMonths) })),
    needs: input.needs,
  };
};

export const tiersOf = ({ priceBreaks }: ManufacturerTerms): readonly Tier[] => [
  { from: 1, percentOff: 0 },
  ...priceBreaks.toSorted((one, other) => one.from - other.from),
];

/** Whether a device of the class that is sent in a month is ready in another one: back, and still within its life. */
export const isReadyIn = (
  { terms, availableFrom, lifeMonths }: DeviceClass,
  sentIn: number,
  month: number,
): boolean => sentIn >= availableFrom && month >= sentIn + terms.turnaroundMonths && month < lifeMonths;

/**
 * Months in which a device of the class may have to be sent: those in which it, or another one of its manufacturer, is first
 * there to be sent. A shipment of any other month can go earlier, and where it then meets another one of its manufacturer the
 * two are one, which never costs more. Only what comes back within the plan and within its life is worth sending.
 */
export const sendingMonths = (each: DeviceClass, { classes, months }: PlanProblem): readonly number[] =>
  [...new Set(classes.filter(({ terms }) => terms === each.terms).map(({ availableFrom }) => availableFrom))]
    .sort((one, other) => one - other)
    .filter((sentIn) => {
      const back = sentIn + each.terms.turnaroundMonths;
      return back < months && isReadyIn(each, sentIn, back);
    });
