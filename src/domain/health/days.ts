/** Whole days between two moments in UTC. */

const dayMs = 86_400_000;

/** Below 0 where the second is the earlier one. */
export const daysBetweenMoments = (from: string, to: string): number =>
  Math.floor((Date.parse(to) - Date.parse(from)) / dayMs);
