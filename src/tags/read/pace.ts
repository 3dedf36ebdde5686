/** How long a reading may still go on: a budget of time, and a wish to stop. */

export interface Pace {
  /** True once the time is used up or the reading is no longer wanted; asked between steps. */
  isOver(): boolean;
  /** Milliseconds of the budget that are left; 0 or less once it is used up. */
  leftMs(): number;
}

export const paceOf = (options: {
  readonly budgetMs: number;
  readonly now: () => number;
  readonly isCancelled: () => boolean;
}): Pace => {
  const started = options.now();
  const leftMs = (): number => started + options.budgetMs - options.now();
  return { leftMs, isOver: () => options.isCancelled() || leftMs() <= 0 };
};
