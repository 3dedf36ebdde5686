/** How far two inspectors agree beyond chance. */

export interface Agreement {
  readonly pairs: number;
  /** The share on which they agree. */
  readonly observed: number;
  /** The share on which they would agree by chance, given how often each says what. */
  readonly expected: number;
  /** Absent where both always say the same one thing: then chance explains everything, and nothing is known. */
  readonly kappa?: number;
  /** Of kappa. */
  readonly standardError?: number;
}

/**
 * Cohen's kappa (1960) with the standard error of that paper. Each pair is what the first and the second inspector said of
 * the same thing.
 */
export const cohensKappa = (pairs: readonly (readonly [first: string, second: string])[]): Agreement => {
  const all = pairs.length;
  if (all === 0) return { pairs: 0, observed: 0, expected: 0 };
  const said = [...new Set(pairs.flat())];
  const share = (place: 0 | 1, answer: string): number =>
    pairs.filter((pair) => pair[place] === answer).length / all;
  const observed = pairs.filter(([first, second]) => first === second).length / all;
  const expected = said.reduce((sum, answer) => sum + share(0, answer) * share(1, answer), 0);
  if (expected >= 1) return { pairs: all, observed, expected };
  return {
    pairs: all,
    observed,
    expected,
    kappa: (observed - expected) / (1 - expected),
    standardError: Math.sqrt((observed * (1 - observed)) / (all * (1 - expected) ** 2)),
  };
};
