/** How long a reading may still go on: a budget of time, and a wish to stop. */

export interface Pace {
  /** True once the time is used up or the reading is no longer wanted; asked between steps. */
  isOver(): boolean;
  /** Milliseconds of the budget that are left; 0 or less once it is used up. */
  leftMs(): number;
}

/** The rest is for a last step that takes longer than those before it. */
const shareForSteps = 0.9;

export const paceOf = (options: {
  readonly budgetMs: number;
  readonly now: () => number;
  readonly isCancelled: () => boolean;
}): Pace => {
  const started = options.now();
  const leftMs = (): number => started + shareForSteps * options.budgetMs - options.now();
  return { leftMs, isOver: () => options.isCancelled() || leftMs() <= 0 };
};

/** Steps of one kind differ: the next one may take this many times as long as the longest until now. */
const roomForLonger = 1.5;

/** Asked before each of several steps: whether one somewhat longer than the longest until now would still end in time. */
export const stepsWithin = (pace: Pace): { fitsAnother(): boolean } => {
  let longestMs = 0;
  let leftMs = pace.leftMs();
  return {
    fitsAnother: () => {
      const now = pace.leftMs();
      longestMs = Math.max(longestMs, leftMs - now);
      leftMs = now;
      return !pace.isOver() && now >= roomForLonger * longestMs;
    },
  };
};
