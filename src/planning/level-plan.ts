/**
 * The bench plan: every device is inspected before it is due, the weeks are as level as that allows, and where there are more
 * inspections than the bench can make it says which days and how many. A plan proposes; nothing is moved or put off by it.
 */
import type { BenchId, CalendarDate } from '../domain/brand.ts';
import { addDays, latestOf, mondayOf } from '../domain/calendar.ts';
import { type DayWindow, LevelFlow } from './level-flow.ts';

export interface PlannedJob {
  readonly benchId: BenchId;
  readonly dueOn: CalendarDate;
  /** The last day on which it is out on a job; it can be inspected from the next day on. */
  readonly outUntil?: CalendarDate | undefined;
}

/** A day on which the bench is open. */
export interface BenchDay {
  readonly on: CalendarDate;
  /** Documented inspections that it can make. */
  readonly inspections: number;
}

export interface PlanRequest {
  readonly today: CalendarDate;
  /** Devices due after the last day are left to a later plan. */
  readonly jobs: readonly PlannedJob[];
  /** In order, from today or later; a day that is not there is closed. */
  readonly days: readonly BenchDay[];
  /** Work is pulled forward by no more days than this: what is inspected early loses the rest of its interval. */
  readonly mostDaysEarly: number;
}

export interface PlannedInspection {
  readonly benchId: BenchId;
  readonly dueOn: CalendarDate;
  readonly on: CalendarDate;
  /** It is overdue, comes back too late, or found no place in time: it is out of use from its due date until then. */
  readonly isLate: boolean;
}

export interface PlannedWeek {
  readonly monday: CalendarDate;
  readonly planned: number;
  readonly capacity: number;
}

/** Days in which more inspections have to be made than the bench can make, none of them movable to another day. */
export interface Shortage {
  readonly from: CalendarDate;
  readonly until: CalendarDate;
  readonly needed: number;
  readonly capacity: number;
}

export interface LevelPlan {
  /** In order of their day, and on a day of their due date. */
  readonly planned: readonly PlannedInspection[];
  /** Late, and no day is left for it. */
  readonly unplanned: readonly PlannedJob[];
  /** Out on a job until its due date or longer: to be called in. */
  readonly calledIn: readonly PlannedJob[];
  readonly weeks: readonly PlannedWeek[];
  /** Empty where every device that can be inspected in time is. */
  readonly shortages: readonly Shortage[];
}

export const levelPlan = ({ today, jobs, days, mostDaysEarly }: PlanRequest): LevelPlan => {
  const lastDay = days.at(-1)?.on;
  const inReach = jobs
    .filter(({ dueOn }) => lastDay !== undefined && dueOn <= lastDay)
    .toSorted((a, b) => a.dueOn.localeCompare(b.dueOn) || (a.benchId < b.benchId ? -1 : 1));
  const calendar = new BenchCalendar(days);
  const flow = new LevelFlow(calendar.flowDays);
  const placed: { readonly job: PlannedJob; readonly window: DayWindow; readonly isLate: boolean }[] = [];
  const late: PlannedJob[] = [];
  const full: FullDays[] = [];
  for (const job of inReach) {
    if (job.dueOn < today || (job.outUntil ?? '') >= job.dueOn) {
      late.push(job);
      continue;
    }
    const from = earliestInTime(job, today, mostDaysEarly);
    const window = calendar.window(from, job.dueOn);
    const found = window.last < window.first ? window : flow.place(window);
    if (found === undefined) placed.push({ job, window, isLate: false });
    else {
      late.push(job);
      full.push({ window: found, from, dueOn: job.dueOn });
    }
  }
  const unplanned: PlannedJob[] = [];
  for (const job of late) {
    const window = asSoonAsPossible(job, calendar, flow, today);
    if (window === undefined) unplanned.push(job);
    else placed.push({ job, window, isLate: true });
  }
  return {
    planned: inOrder(placed, flow.loads, days),
    unplanned,
    calledIn: inReach.filter(({ dueOn, outUntil }) => dueOn >= today && (outUntil ?? '') >= dueOn),
    weeks: calendar.weeks(flow.loads),
    shortages: shortagesOf(full, days),
  };
};

/**
 * What is late already waits for nothing but a place: its window ends with the first day that has one. Days that are full
 * with what cannot be moved out of them are stepped over at once.
 */
const asSoonAsPossible = (
  job: PlannedJob,
  calendar: BenchCalendar,
  flow: LevelFlow,
  today: CalendarDate,
): DayWindow | undefined => {
  const first = calendar.firstFrom(earliestDay(job, today));
  for (let last = first; last < calendar.flowDays.length; ) {
    const window = { first, last };
    const full = flow.place(window);
    if (full === undefined) return window;
    last = full.last + 1;
  }
  return undefined;
};

const earliestInTime = (job: PlannedJob, today: CalendarDate, mostDaysEarly: number): CalendarDate =>
  latestOf(earliestDay(job, today), addDays(job.dueOn, -mostDaysEarly));

const earliestDay = ({ outUntil }: PlannedJob, today: CalendarDate): CalendarDate =>
  outUntil === undefined || outUntil < today ? today : addDays(outUntil, 1);

/** The bench days by their numbers. */
class BenchCalendar {
  readonly flowDays: readonly { readonly capacity: number; readonly week: number }[];
  readonly #days: readonly BenchDay[];
  readonly #mondays: readonly CalendarDate[];

  constructor(days: readonly BenchDay[]) {
    this.#days = days;
    const mondays = days.map(({ on }) => mondayOf(on));
    this.#mondays = [...new Set(mondays)];
    const weeks = new Map(this.#mondays.map((monday, week) => [monday, week]));
    this.flowDays = days.map(({ inspections }, day) => ({
      capacity: inspections,
      week: weeks.get(mondays[day] as CalendarDate) ?? 0,
    }));
  }

  /** The first day that is not before the date; the number of days where there is none. */
  firstFrom(date: CalendarDate): number {
    let [low, high] = [0, this.#days.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#days[middle]?.on ?? '') < date) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** `last` is before `first` where the bench is open on none of the days. */
  window(from: CalendarDate, until: CalendarDate): DayWindow {
    return { first: this.firstFrom(from), last: this.firstFrom(addDays(until, 1)) - 1 };
  }

  weeks(loads: readonly number[]): readonly PlannedWeek[] {
    return this.#mondays.map((monday, week) => {
      const own = this.flowDays.flatMap((day, index) => (day.week === week ? [index] : []));
      const sum = (of: (index: number) => number): number =>
        own.reduce((total, index) => total + of(index), 0);
      return {
        monday,
        planned: sum((index) => loads[index] ?? 0),
        capacity: sum((index) => this.flowDays[index]?.capacity ?? 0),
      };
    });
  }
}

/**
 * The days keep their numbers of inspections, and each takes those that have to be made first: with release dates, due dates
 * and work of one length, earliest due first finds a plan wherever there is one (J. R. Jackson, 1955, from memory).
 */
const inOrder = (
  placed: readonly { readonly job: PlannedJob; readonly window: DayWindow; readonly isLate: boolean }[],
  loads: readonly number[],
  days: readonly BenchDay[],
): readonly PlannedInspection[] => {
  const waiting = placed.toSorted(
    (a, b) => a.window.last - b.window.last || a.job.dueOn.localeCompare(b.job.dueOn),
  );
  return days.flatMap(({ on }, day) => {
    const taken: PlannedInspection[] = [];
    for (let at = 0; at < waiting.length && taken.length < (loads[day] ?? 0); ) {
      const next = waiting[at];
      if (next === undefined || next.window.first > day) {
        at += 1;
        continue;
      }
      waiting.splice(at, 1);
      taken.push({ benchId: next.job.benchId, dueOn: next.job.dueOn, on, isLate: next.isLate });
    }
    return taken.toSorted((a, b) => a.dueOn.localeCompare(b.dueOn));
  });
};

/** What found no place, and the days that are full with what cannot be moved out of them. */
interface FullDays {
  readonly window: DayWindow;
  /** Between these it was to be inspected. */
  readonly from: CalendarDate;
  readonly dueOn: CalendarDate;
}

/** Full days that share one are told together, up to the last due date of what found no place in them. */
const shortagesOf = (full: readonly FullDays[], days: readonly BenchDay[]): readonly Shortage[] => {
  const merged: { first: number; last: number; from: CalendarDate; until: CalendarDate; missing: number }[] =
    [];
  for (const { window, from, dueOn } of full.toSorted((a, b) => a.window.first - b.window.first)) {
    const before = merged.at(-1);
    if (before !== undefined && window.first <= before.last) {
      before.last = Math.max(before.last, window.last);
      before.until = latestOf(before.until, dueOn);
      before.missing += 1;
    } else {
      const isClosed = window.last < window.first;
      const start = isClosed ? from : (days[window.first]?.on ?? from);
      merged.push({ ...window, from: start, until: dueOn, missing: 1 });
    }
  }
  return merged.map(({ first, last, from, until, missing }) => {
    const capacity = days.slice(first, last + 1).reduce((sum, { inspections }) => sum + inspections, 0);
    const lastOn = days[last]?.on;
    return {
      from,
      until: last < first || lastOn === undefined ? until : latestOf(until, lastOn),
      needed: capacity + missing,
      capacity,
    };
  });
};
