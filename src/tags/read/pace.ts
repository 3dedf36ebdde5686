/** How long a reading may still go on: a budget of time, and a wish to stop. */

export interface Pace {
  /** True once the time is used up or the reading is no longer wanted; asked between steps. */
  isOver(): boolean;
  /** Share of the budget that is used, 0 to 1. */
  used(): number;
}

export const paceOf = (options: {
  readonly budgetMs: number;
  readonly now: () => number;
  readonly isCancelled: () => boolean;
}): Pace => {
  const started = options.now();
  const used = (): number => (options.now() - started) / options.budgetMs;
  return { used, isOver: () => options.isCancelled() || used() >= 1 };
};
