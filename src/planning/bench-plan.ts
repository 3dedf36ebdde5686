/**
 * The plan of the bench: for each device a day on which its next inspection is made.
 *
 * In this order: no device that is still in time becomes late, as far as the bench has room; a device that is overdue comes
 * as soon as possible, and after it those that were never inspected, for neither may be used meanwhile; the load is level
 * (`levelLoad`), and as little of the intervals is lost as that allows. What is overdue never makes another device late. A
 * device is not taken more than the chosen days before it is due, nor in the first half of its interval, unless due dates
 * cannot be kept otherwise: then that bound is widened for all, by the fewest days that do.
 */
import type { BenchId, CalendarDate } from '../domain/brand.ts';
import { daysBetween } from '../domain/calendar.ts';
import { grouped } from '../domain/grouped.ts';
import type { BenchDay } from './bench-day.ts';
import {
  countPlaced,
  earliestDeadlineFirst,
  latestFirst,
  type Window,
  type WindowGroup,
} from './earliest-deadline.ts';
import { levelLoad } from './level-load.ts';
import { shortages } from './shortage.ts';

export interface PlanDevice {
  readonly benchId: BenchId;
  /** Absent where it was never inspected. */
  readonly dueOn?: CalendarDate | undefined;
  readonly lastInspectedOn?: CalendarDate | undefined;
  /** It is out on a job and comes back on that day, so the bench can have it on the next one. */
  readonly outUntil?: CalendarDate | undefined;
}

export type PlanKind = 'overdue' | 'due' | 'never inspected';

export interface PlannedInspection {
  readonly benchId: BenchId;
  readonly kind: PlanKind;
  readonly on: CalendarDate;
  readonly dueOn?: CalendarDate | undefined;
  /** How many days of the interval are lost: from that day to the due date. 0 where it is not due. */
  readonly daysEarly: number;
  /** It is out until after the last bench day before it is due, so it must be called in; the plan counts on that. */
  readonly callIn: boolean;
}

/** Why a device has no day: the bench has no room for it before its due date, or within the days that are planned. */
export interface UnplannedInspection {
  readonly benchId: BenchId;
  readonly kind: PlanKind;
  readonly dueOn?: CalendarDate | undefined;
  readonly callIn: boolean;
}

/** From the first to the last of these days more devices must be inspected than the bench has room for. */
export interface BenchShortage {
  readonly from: CalendarDate;
  readonly until: CalendarDate;
  readonly inspections: number;
  readonly room: number;
}

export interface BenchPlan {
  readonly days: readonly BenchDay[];
  /** In the order of the days; on one day what is due first comes first. */
  readonly planned: readonly PlannedInspection[];
  readonly unplanned: readonly UnplannedInspection[];
  /** Empty where every due date can be kept: together they prove that no plan keeps more of them. */
  readonly shortages: readonly BenchShortage[];
  /** Devices that are due after the last of the days. */
  readonly dueLater: number;
  /** So many days before its due date a device may have been taken; more than was chosen where that had to be widened. */
  readonly earliestDays: number;
}

interface Job extends Window {
  readonly device: PlanDevice;
  readonly callIn: boolean;
}

/** `days` follow one another without a gap, the first is today. */
export const benchPlan = (
  devices: readonly PlanDevice[],
  days: readonly BenchDay[],
  mostDaysEarly: number,
): BenchPlan => {
  const steps = benchPlanInSteps(devices, days, mostDaysEarly);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
};

/** How many times `benchPlanInSteps` pauses before it has the plan. */
export const benchPlanPauses = 7;

/** The same, with pauses in which whoever runs it can look after others, or leave it. */
export function* benchPlanInSteps(
  devices: readonly PlanDevice[],
  days: readonly BenchDay[],
  mostDaysEarly: number,
): Generator<undefined, BenchPlan, undefined> {
  const room = days.map((day) => day.room);
  const { overdue, neverInspected, due, dueLater } = sorted(devices, days);
  yield;
  const inTime = due.map((device) => jobOf(device, days));
  const placeable = earliestDeadlineFirst(inTime, room);
  yield;
  const kept = inTime.filter((_, job) => placeable[job] !== -1);
  const dropped = inTime.filter((_, job) => placeable[job] === -1);

  const taken = countByDay(latestFirst(kept, room), days.length);
  yield;
  const overdueDays = fillEarliest(overdue.length, room, taken);
  const overdueLoad = countByDay(overdueDays, days.length);
  const left = room.map((capacity, day) => capacity - (overdueLoad[day] ?? 0));

  const { windows, earliestDays } = narrowest(kept, left, mostDaysEarly);
  yield;
  const load = levelLoad(windows, room, overdueLoad);
  yield;
  const dayOf = earliestDeadlineFirst(windows, load);
  const allTaken = load.map((count, day) => count + (overdueLoad[day] ?? 0));
  const neverDays = fillEarliest(neverInspected.length, room, allTaken);
  yield;

  const rows = [
    ...overdue.map((device, index) => row(device, 'overdue', overdueDays[index], days, isOut(device, days))),
    ...kept.map(({ device, callIn }, index) => row(device, 'due', dayOf[index], days, callIn)),
    ...dropped.map(({ device, callIn }) => row(device, 'due', -1, days, callIn)),
    ...neverInspected.map((device, index) => row(device, 'never inspected', neverDays[index], days, false)),
  ];
  yield;
  return {
    days,
    planned: rows.filter(hasDay).sort(inOrder),
    unplanned: rows.filter((each) => !hasDay(each)),
    shortages: shortages(inTime, room).map(({ first, last, jobs, room: capacity }) => ({
      from: dayAt(days, first),
      until: dayAt(days, last),
      inspections: jobs,
      room: capacity,
    })),
    dueLater,
    earliestDays,
  };
}

const sorted = (devices: readonly PlanDevice[], days: readonly BenchDay[]) => {
  const today = dayAt(days, 0);
  const end = dayAt(days, days.length - 1);
  const inOrderOfDue = devices.toSorted(
    (one, other) => compare(one.dueOn ?? '', other.dueOn ?? '') || compare(one.benchId, other.benchId),
  );
  const dated = inOrderOfDue.filter(({ dueOn }) => dueOn !== undefined);
  return {
    overdue: dated.filter(({ dueOn = today }) => dueOn < today),
    due: dated.filter(({ dueOn = today }) => dueOn >= today && dueOn <= end),
    dueLater: dated.filter(({ dueOn = today }) => dueOn > end).length,
    neverInspected: inOrderOfDue.filter(({ dueOn }) => dueOn === undefined),
  };
};

const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

const dayAt = (days: readonly BenchDay[], day: number): CalendarDate => {
  const found = days[day];
  if (found === undefined) throw new RangeError(`There is no day ${day} among ${days.length}.`);
  return found.on;
};

const isOut = ({ outUntil }: PlanDevice, days: readonly BenchDay[]): boolean =>
  outUntil !== undefined && outUntil >= dayAt(days, 0);

/** As early as it can be had; a device that does not come back in time is counted as called in today. */
const jobOf = (device: PlanDevice, days: readonly BenchDay[]): Job => {
  const today = dayAt(days, 0);
  const last = daysBetween(today, device.dueOn ?? today);
  if (!isOut(device, days)) return { device, first: 0, last, callIn: false };
  const back = daysBetween(today, device.outUntil ?? today) + 1;
  const comesInTime = days.slice(back, last + 1).some(({ room }) => room > 0);
  return comesInTime
    ? { device, first: back, last, callIn: false }
    : { device, first: 0, last, callIn: true };
};

const countByDay = (dayOf: ArrayLike<number>, days: number): Int32Array => {
  const load = new Int32Array(days);
  for (const day of Array.from(dayOf)) if (day !== -1) load[day] = (load[day] ?? 0) + 1;
  return load;
};

/** One after the other onto the earliest room beside what is taken; -1 where there is none left. */
const fillEarliest = (
  count: number,
  room: readonly number[],
  taken: ArrayLike<number>,
): readonly number[] => {
  const found: number[] = [];
  for (const [day, capacity] of room.entries())
    for (let free = capacity - (taken[day] ?? 0); free > 0 && found.length < count; free -= 1)
      found.push(day);
  return Array.from({ length: count }, (_, index) => found[index] ?? -1);
};

/** The windows with the least reach before the due dates, from the chosen one on, with which every device has room. */
const narrowest = (
  jobs: readonly Job[],
  room: readonly number[],
  mostDaysEarly: number,
): { readonly windows: readonly Window[]; readonly earliestDays: number } => {
  const reaching = jobs.map((job) => ({
    first: job.first,
    last: job.last,
    reach: Math.min(mostDaysEarly, halfIntervalOf(job)),
  }));
  const kinds = kindsOf(reaching);
  const fits = (atLeast: number): boolean => {
    const groups = kinds.map(({ count, ...kind }) => ({ ...narrowed(kind, atLeast), count }));
    return (
      countPlaced(
        groups.sort((one, other) => one.first - other.first),
        room,
      ) === jobs.length
    );
  };
  let [tooFew, enough] = [-1, fits(0) ? 0 : room.length];
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (fits(middle)) enough = middle;
    else tooFew = middle;
  }
  return {
    windows: reaching.map((each) => narrowed(each, enough)),
    earliestDays: Math.max(mostDaysEarly, enough),
  };
};

interface Reaching extends Window {
  readonly reach: number;
}

const narrowed = ({ first, last, reach }: Reaching, atLeast: number): Window => ({
  first: Math.max(first, last - Math.max(atLeast, reach)),
  last,
});

/** Those that are alike as one, with their number. */
const kindsOf = (jobs: readonly Reaching[]): readonly (Reaching & WindowGroup)[] =>
  [...grouped(jobs, ({ first, last, reach }) => `${first} ${last} ${reach}`).values()].flatMap((alike) =>
    alike.slice(0, 1).map((one) => ({ ...one, count: alike.length })),
  );

const halfIntervalOf = ({ device: { dueOn, lastInspectedOn } }: Job): number =>
  dueOn === undefined || lastInspectedOn === undefined
    ? Number.POSITIVE_INFINITY
    : Math.max(0, Math.floor(daysBetween(lastInspectedOn, dueOn) / 2));

const row = (
  { benchId, dueOn }: PlanDevice,
  kind: PlanKind,
  day: number | undefined,
  days: readonly BenchDay[],
  callIn: boolean,
): PlannedInspection | UnplannedInspection => {
  const device = { benchId, kind, ...(dueOn === undefined ? {} : { dueOn }), callIn };
  if (day === undefined || day === -1) return device;
  const on = dayAt(days, day);
  return { ...device, on, daysEarly: kind === 'due' && dueOn !== undefined ? daysBetween(on, dueOn) : 0 };
};

const hasDay = (each: PlannedInspection | UnplannedInspection): each is PlannedInspection => 'on' in each;

const inOrder = (one: PlannedInspection, other: PlannedInspection): number =>
  compare(one.on, other.on) ||
  compare(one.dueOn ?? '9', other.dueOn ?? '9') ||
  compare(one.benchId, other.benchId);
