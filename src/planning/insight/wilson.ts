/** A share of devices with its confidence interval. */
import { normalQuantile } from './kaplan-meier.ts';

export interface Proportion {
  readonly count: number;
  readonly of: number;
  readonly share: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * The 95 % score interval without continuity correction (Wilson, 1927; method 3 of Newcombe, 1998): it holds for small
 * numbers too, and for none and all. Nothing is known of a share of none: 0 to 1.
 */
export const wilson = (count: number, of: number): Proportion => {
  if (of === 0) return { count, of, share: 0, lower: 0, upper: 1 };
  const share = count / of;
  const square = normalQuantile ** 2;
  const centre = share + square / (2 * of);
  const spread = normalQuantile * Math.sqrt((share * (1 - share)) / of + square / (4 * of ** 2));
  const scale = 1 + square / of;
  return {
    count,
    of,
    share,
    lower: count === 0 ? 0 : (centre - spread) / scale,
    upper: count === of ? 1 : (centre + spread) / scale,
  };
};
