/** How long devices last until their first removal: the product-limit estimate with its confidence band. */

/** How long a device was watched, and whether it was removed at the end of that or was still in use. */
export interface Watched {
  /** Zero or more, in any unit. */
  readonly time: number;
  readonly isRemoved: boolean;
}

export interface SurvivalStep {
  readonly time: number;
  /** Devices that were still watched and not removed just before. */
  readonly atRisk: number;
  readonly removed: number;
  /** The share that lasts longer than this. */
  readonly survival: number;
  readonly standardError: number;
  readonly lower: number;
  readonly upper: number;
}

export interface Survival {
  /** One for each time at which something was removed, the earliest first. */
  readonly steps: readonly SurvivalStep[];
  readonly devices: number;
  readonly removed: number;
  /** The longest that any was watched. */
  readonly longest: number;
  /** The earliest time at which half or fewer are left; absent where more than half are left. */
  readonly median?: number;
}

/** The 97.5 % point of the normal distribution. */
export const normalQuantile = 1.959963984540054;

/**
 * Kaplan and Meier (1958). The standard error is Greenwood's; the 95 % band is on the log-minus-log scale (Kalbfleisch and
 * Prentice), so that it never leaves 0 to 1. Devices still in use count as at risk at the time at which they were last seen.
 * Where nothing is left the band has no width that could be computed, and is 0 to 0.
 */
export const kaplanMeier = (watched: readonly Watched[]): Survival => {
  const steps: SurvivalStep[] = [];
  const times = watched.filter(({ isRemoved }) => isRemoved).map(({ time }) => time);
  let survival = 1;
  let greenwood = 0;
  for (const time of [...new Set(times)].sort((one, other) => one - other)) {
    const atRisk = watched.filter((each) => each.time >= time).length;
    const removed = times.filter((each) => each === time).length;
    survival *= 1 - removed / atRisk;
    greenwood += removed / (atRisk * (atRisk - removed));
    const { lower, upper } = band(survival, greenwood);
    const standardError = survival === 0 ? 0 : survival * Math.sqrt(greenwood);
    steps.push({ time, atRisk, removed, survival, standardError, lower, upper });
  }
  const median = steps.find((step) => step.survival <= 0.5)?.time;
  return {
    steps,
    devices: watched.length,
    removed: times.length,
    longest: watched.reduce((most, { time }) => Math.max(most, time), 0),
    ...(median === undefined ? {} : { median }),
  };
};

const band = (survival: number, greenwood: number): { readonly lower: number; readonly upper: number } => {
  if (survival <= 0) return { lower: 0, upper: 0 };
  if (survival >= 1) return { lower: 1, upper: 1 };
  const spread = (normalQuantile * Math.sqrt(greenwood)) / Math.abs(Math.log(survival));
  return { lower: survival ** Math.exp(spread), upper: survival ** Math.exp(-spread) };
};
