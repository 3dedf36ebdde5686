/** The plan as a problem for the solver: what may be chosen, what it costs, and when what is ready. */
import { knowsEveryLife } from './missing-data.ts';
import type { HeldDevice, ManufacturerTerms, NewDevice, ReturnPlanInput } from './plan-input.ts';

/** Devices of one manufacturer and length that are there to be sent, back, and worn out in the same months: only prices differ. */
export interface DeviceGroup {
  readonly terms: ManufacturerTerms;
  readonly lengthM: number;
  readonly availableFrom: number;
  readonly turnaroundMonths: number;
  /** The first month in which none of them is ready any more; at most the one after the plan. */
  readonly readyUntil: number;
  /** The cheapest first. */
  readonly classes: readonly PriceClass[];
  readonly size: number;
}

/** Those of a group that cost the plan the same. */
export interface PriceClass {
  /** What the repair of one costs the planned months, before any price break. */
  readonly charge: number;
  /** The lowest price first. */
  readonly devices: readonly HeldDevice[];
}

/** A price break, or none: `from` 1 and nothing off. */
export interface Tier {
  readonly from: number;
  /** With more devices than this the next price break holds, which is never dearer. */
  readonly most: number;
  readonly percentOff: number;
}

export interface PlanProblem {
  readonly months: number;
  readonly groups: readonly DeviceGroup[];
  readonly manufacturers: readonly ManufacturerTerms[];
  /** What one new device costs the planned months. */
  readonly offers: readonly (NewDevice & { readonly charge: number })[];
  readonly needs: ReturnPlanInput['needs'];
}

interface ChargedDevice {
  readonly device: HeldDevice;
  readonly charge: number;
}

/**
 * Where every service life is known, a price is charged by the share of the life that the plan uses: what lasts half as long
 * costs twice as much a month. Where one is not, whole prices are compared. A device of a length of which nobody has said how
 * many are needed is no part of it.
 */
export const problemOf = (input: ReturnPlanInput): PlanProblem => {
  const { months } = input;
  const byShare = knowsEveryLife(input);
  const share = (lifeMonths: number | undefined): number =>
    byShare && lifeMonths !== undefined ? Math.min(1, months / Math.max(1, lifeMonths)) : 1;
  const terms = new Map(input.manufacturers.map((each) => [each.name, each]));
  const needed = new Set(input.needs.map(({ lengthM }) => lengthM));
  const groups = new Map<string, Omit<DeviceGroup, 'classes' | 'size'> & { inside: ChargedDevice[] }>();
  for (const device of input.devices) {
    const { manufacturer, lengthM, repairable, repairPrice, availableFrom, lifeMonths } = device;
    const ofMaker = terms.get(manufacturer);
    const turnaroundMonths = device.turnaroundMonths ?? ofMaker?.turnaroundMonths;
    if (ofMaker === undefined || repairPrice === undefined || turnaroundMonths === undefined) continue;
    if (!repairable || !needed.has(lengthM)) continue;
    const readyUntil = Math.min(months, lifeMonths ?? months);
    const key = [manufacturer, lengthM, availableFrom, turnaroundMonths, readyUntil].join('|');
    const group = groups.get(key) ?? {
      terms: ofMaker,
      lengthM,
      availableFrom,
      turnaroundMonths,
      readyUntil,
      inside: [],
    };
    group.inside.push({ device, charge: repairPrice * share(lifeMonths) });
    groups.set(key, group);
  }
  return {
    months,
    groups: [...groups.values()].map(({ inside, ...group }) => ({
      ...group,
      classes: classesOf(inside),
      size: inside.length,
    })),
    manufacturers: input.manufacturers,
    offers: input.newDevices.map((offer) => ({ ...offer, charge: offer.price * share(offer.lifeMonths) })),
    needs: input.needs,
  };
};

const classesOf = (inside: readonly ChargedDevice[]): readonly PriceClass[] => {
  const classes = new Map<number, HeldDevice[]>();
  for (const { device, charge } of inside) classes.set(charge, [...(classes.get(charge) ?? []), device]);
  return [...classes]
    .sort(([one], [other]) => one - other)
    .map(([charge, devices]) => ({
      charge,
      devices: devices.toSorted((one, other) => (one.repairPrice ?? 0) - (other.repairPrice ?? 0)),
    }));
};

/** Only price breaks that take more off than every one before, and that so many devices of the manufacturer can reach. */
export const tiersOf = (
  { priceBreaks, name }: ManufacturerTerms,
  { groups }: PlanProblem,
): readonly Tier[] => {
  const reach = groups.reduce((sum, { terms, size }) => sum + (terms.name === name ? size : 0), 0);
  const better: { from: number; percentOff: number }[] = [{ from: 1, percentOff: 0 }];
  for (const { from, percentOff } of priceBreaks.toSorted(
    (one, other) => one.from - other.from || other.percentOff - one.percentOff,
  ))
    if (from <= reach && percentOff > (better.at(-1)?.percentOff ?? 0)) better.push({ from, percentOff });
  return better.map((tier, place) => ({
    ...tier,
    most: (better[place + 1]?.from ?? reach + 1) - 1,
  }));
};

/** Whether a device of the group that is sent in a month is ready in another one: back, and still within its life. */
export const isReadyIn = (
  { availableFrom, turnaroundMonths, readyUntil }: DeviceGroup,
  sentIn: number,
  month: number,
): boolean => sentIn >= availableFrom && month >= sentIn + turnaroundMonths && month < readyUntil;

/**
 * Months in which a device of the group may have to be sent: those in which it, or another one of its manufacturer, is first
 * there to be sent. A shipment of any other month can go earlier, and where it then meets another one of its manufacturer the
 * two are one, which never costs more. Only what comes back within the plan and within its life is worth sending.
 */
export const sendingMonths = (group: DeviceGroup, { groups }: PlanProblem): readonly number[] =>
  [...new Set(groups.filter(({ terms }) => terms === group.terms).map(({ availableFrom }) => availableFrom))]
    .sort((one, other) => one - other)
    .filter((sentIn) => isReadyIn(group, sentIn, sentIn + group.turnaroundMonths));
