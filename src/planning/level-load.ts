/**
 * How many inspections each day takes, so that the load is as level as due dates allow.
 *
 * Among all loads that keep every window, it gives one with the least sum of (inspections of the day)² / (room of the day),
 * and of those the one whose days are the latest in all, so that the fewest days of the intervals are lost. Both are sums of
 * convex costs of single days, compared in that order, and the loads that can be matched to the jobs are the bases of a
 * polymatroid (one that a transversal matroid induces), so the greedy method is exact: one inspection after the other goes to
 * the day on which it costs least, unless that day cannot be filled any more, and then it never can again (A. Federgruen and
 * H. Groenevelt, The greedy procedure for resource allocation problems, Operations Research 34, 1986; from memory). Whether
 * days can be filled is asked of the earliest-deadline rule (`countPlaced`). Trying several inspections at once is ours and changes nothing, for
 * a part of what can be filled can be filled.
 */
import { countPlaced, groupedWindows, type Window } from './earliest-deadline.ts';

/**
 * `taken` is what is on the days already; it counts for the level and not in the answer. The windows must have room beside
 * it: throws where not all of them have.
 */
export const levelLoad = (
  windows: readonly Window[],
  room: readonly number[],
  taken: ArrayLike<number>,
): Int32Array => {
  const load = new Int32Array(room.length);
  const cannotTakeMore = new Uint8Array(room.length);
  const days = daysByCost(windows, room, taken);
  const groups = groupedWindows(windows);
  const canBeFilled = (total: number): boolean => countPlaced(groups, load) === total;
  let placed = 0;
  for (let next = 0, atOnce = 1; placed < windows.length; ) {
    const tried: number[] = [];
    let after = next;
    for (; after < days.length && tried.length < Math.min(atOnce, windows.length - placed); after += 1) {
      const day = days[after] ?? 0;
      if (cannotTakeMore[day] === 0) tried.push(day);
    }
    if (tried.length === 0) throw new Error('There is no room for every window.');
    for (const day of tried) load[day] = (load[day] ?? 0) + 1;
    if (canBeFilled(placed + tried.length)) {
      placed += tried.length;
      next = after;
      atOnce *= 2;
      continue;
    }
    for (const day of tried) load[day] = (load[day] ?? 0) - 1;
    if (tried.length > 1) {
      atOnce = Math.ceil(tried.length / 2);
      continue;
    }
    cannotTakeMore[tried[0] ?? 0] = 1;
    next = after;
  }
  return load;
};

/** A day once for each inspection that it has room for, in the order of what one more costs there; the latest of equals first. */
const daysByCost = (
  windows: readonly Window[],
  room: readonly number[],
  taken: ArrayLike<number>,
): readonly number[] => {
  const steps = room.flatMap((capacity, day) => {
    const before = taken[day] ?? 0;
    const most = Math.max(0, Math.min(capacity - before, windows.length));
    return Array.from({ length: most }, (_, index) => ({
      day,
      rise: 2 * (before + index) + 1,
      capacity,
    }));
  });
  return steps
    .sort((one, other) => one.rise * other.capacity - other.rise * one.capacity || other.day - one.day)
    .map(({ day }) => day);
};
