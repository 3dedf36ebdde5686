/**
 * Which stretches of days have more to do than room: the proof that no plan keeps every due date.
 *
 * All jobs fit if and only if no stretch of days has more jobs that must be done within it than room (P. Hall's condition,
 * for intervals). How many do not fit is the largest sum of such excesses over stretches that do not overlap, for the days
 * that any set of jobs can use are such stretches (König and Ore's deficiency; from memory). So the excesses that are given
 * add up to the inspections that are missing.
 */
import type { Window } from './earliest-deadline.ts';

export interface Stretch {
  readonly first: number;
  readonly last: number;
  /** Jobs that can be done on no other day. */
  readonly jobs: number;
  readonly room: number;
}

/** In the order of the days, each as short as its excess allows; empty where every job fits. O(days² + jobs). */
export const shortages = (windows: readonly Window[], room: readonly number[]): readonly Stretch[] => {
  const days = room.length;
  const lastsByFirst: number[][] = room.map(() => []);
  for (const { first, last } of windows) lastsByFirst[first]?.push(Math.min(last, days - 1));
  const worthFrom = new Float64Array(days + 1);
  const stretchFrom: (Stretch | undefined)[] = [];
  const jobsUntil = new Int32Array(days);
  for (let first = days - 1; first >= 0; first -= 1) {
    for (const last of lastsByFirst[first] ?? []) jobsUntil[last] = (jobsUntil[last] ?? 0) + 1;
    worthFrom[first] = worthFrom[first + 1] ?? 0;
    let jobs = 0;
    let roomSoFar = 0;
    for (let last = first; last < days; last += 1) {
      jobs += jobsUntil[last] ?? 0;
      roomSoFar += room[last] ?? 0;
      const worth = jobs - roomSoFar + (worthFrom[last + 1] ?? 0);
      if (jobs > roomSoFar && worth > (worthFrom[first] ?? 0)) {
        worthFrom[first] = worth;
        stretchFrom[first] = { first, last, jobs, room: roomSoFar };
      }
    }
  }
  const found: Stretch[] = [];
  for (let day = 0; day < days; ) {
    const stretch = stretchFrom[day];
    const isTaken = stretch !== undefined && (worthFrom[day] ?? 0) > (worthFrom[day + 1] ?? 0);
    if (isTaken) found.push(stretch);
    day = isTaken ? stretch.last + 1 : day + 1;
  }
  return found;
};
