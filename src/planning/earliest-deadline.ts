/**
 * Earliest deadline first: jobs of one length, each with a first and a last day, onto days with room for some.
 *
 * On each day the jobs that may be done are taken in the order of their last days. For such jobs that places as many as any
 * way can, and fills the earliest room (F. Glover, Maximum matching in a convex bipartite graph, 1967; J. R. Jackson's rule
 * of 1955 with release dates; both from memory).
 */

import { grouped } from '../domain/grouped.ts';

/** Days are numbers from 0 on; both belong to the window, and `last` is never before `first`. */
export interface Window {
  readonly first: number;
  readonly last: number;
}

const byFirstDay = (windows: readonly Window[]): Int32Array =>
  Int32Array.from(windows.keys()).sort(
    (one, other) => (windows[one]?.first ?? 0) - (windows[other]?.first ?? 0),
  );

/** The number of the day on which each job is done, or -1 where there is no room for it. O(jobs + days) once they are in order. */
export const earliestDeadlineFirst = (windows: readonly Window[], room: ArrayLike<number>): Int32Array => {
  const days = room.length;
  const byFirst = byFirstDay(windows);
  const waiting = new Int32Array(days).fill(-1);
  const behind = new Int32Array(windows.length).fill(-1);
  const dayOf = new Int32Array(windows.length).fill(-1);
  let released = 0;
  let earliest = days;
  for (let day = 0; day < days; day += 1) {
    for (; released < byFirst.length; released += 1) {
      const job = byFirst[released] ?? -1;
      const window = windows[job];
      if (window === undefined || window.first > day) break;
      const last = Math.min(window.last, days - 1);
      if (last < day) continue;
      behind[job] = waiting[last] ?? -1;
      waiting[last] = job;
      earliest = Math.min(earliest, last);
    }
    earliest = Math.max(earliest, day);
    for (let free = room[day] ?? 0; free > 0; free -= 1) {
      while (earliest < days && waiting[earliest] === -1) earliest += 1;
      const job = waiting[earliest] ?? -1;
      if (job === -1) break;
      waiting[earliest] = behind[job] ?? -1;
      dayOf[job] = day;
    }
  }
  return dayOf;
};

/** Windows that are alike, as one with their number: a large fleet has few that differ. */
export interface WindowGroup extends Window {
  readonly count: number;
}

/** In the order of their first days. */
export const groupedWindows = (windows: readonly Window[]): readonly WindowGroup[] =>
  [...grouped(windows, ({ first, last }) => `${first} ${last}`).values()]
    .flatMap(([window, ...others]) =>
      window === undefined ? [] : [{ first: window.first, last: window.last, count: others.length + 1 }],
    )
    .sort((one, other) => one.first - other.first);

/** How many jobs `earliestDeadlineFirst` places, without saying on which days. O(groups + days). */
export const countPlaced = (byFirst: readonly WindowGroup[], room: ArrayLike<number>): number => {
  const days = room.length;
  const waiting = new Int32Array(days);
  let placed = 0;
  let released = 0;
  let earliest = days;
  for (let day = 0; day < days; day += 1) {
    for (; released < byFirst.length; released += 1) {
      const group = byFirst[released];
      if (group === undefined || group.first > day) break;
      const last = Math.min(group.last, days - 1);
      if (last < day) continue;
      waiting[last] = (waiting[last] ?? 0) + group.count;
      earliest = Math.min(earliest, last);
    }
    earliest = Math.max(earliest, day);
    for (let free = room[day] ?? 0; free > 0; ) {
      while (earliest < days && waiting[earliest] === 0) earliest += 1;
      const taken = Math.min(free, waiting[earliest] ?? 0);
      if (taken === 0) break;
      waiting[earliest] = (waiting[earliest] ?? 0) - taken;
      free -= taken;
      placed += taken;
    }
  }
  return placed;
};

/** The same from the other end: as many as any way can place, on the latest room there is. */
export const latestFirst = (windows: readonly Window[], room: ArrayLike<number>): Int32Array => {
  const end = room.length - 1;
  const mirrored = windows.map(({ first, last }) => ({ first: Math.max(0, end - last), last: end - first }));
  const dayOf = earliestDeadlineFirst(mirrored, Array.from(room).reverse());
  return dayOf.map((day) => (day === -1 ? -1 : end - day));
};
