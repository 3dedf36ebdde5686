/** How far two inspectors agree beyond chance. */
import { normalQuantile } from './kaplan-meier.ts';

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
  /** The 95 % interval; absent where they never differ, for a large sample's error is none then, whatever their number. */
  readonly lower?: number;
  readonly upper?: number;
}

export type SaidPair = readonly [first: string, second: string];

/**
 * Cohen's kappa (1960) with the large-sample standard error of Fleiss, Cohen and Everitt (1969) and the 95 % interval that
 * follows from it, kept within −1 and 1. Each pair is what the first and the second inspector said of the same thing.
 */
export const cohensKappa = (pairs: readonly SaidPair[]): Agreement => {
  const all = pairs.length;
  if (all === 0) return { pairs: 0, observed: 0, expected: 0 };
  const said = [...new Set(pairs.flat())];
  const share = (first: string, second: string): number =>
    pairs.filter((pair) => pair[0] === first && pair[1] === second).length / all;
  const ofFirst = new Map(said.map((answer) => [answer, sum(said, (other) => share(answer, other))]));
  const ofSecond = new Map(said.map((answer) => [answer, sum(said, (other) => share(other, answer))]));
  const first = (answer: string): number => ofFirst.get(answer) ?? 0;
  const second = (answer: string): number => ofSecond.get(answer) ?? 0;
  const observed = pairs.filter(([one, other]) => one === other).length / all;
  const expected = sum(said, (answer) => first(answer) * second(answer));
  if (said.length === 1) return { pairs: all, observed, expected };
  const kappa = (observed - expected) / (1 - expected);
  const agreeing = sum(
    said,
    (answer) =>
      share(answer, answer) * (1 - expected - (first(answer) + second(answer)) * (1 - observed)) ** 2,
  );
  const differing = sum(said, (one) =>
    sum(said, (other) => (one === other ? 0 : share(one, other) * (second(one) + first(other)) ** 2)),
  );
  const centre = (observed * expected - 2 * expected + observed) ** 2;
  const variance = (agreeing + (1 - observed) ** 2 * differing - centre) / (all * (1 - expected) ** 4);
  const standardError = Math.sqrt(Math.max(0, variance));
  return {
    pairs: all,
    observed,
    expected,
    kappa,
    standardError,
    ...(observed === 1
      ? {}
      : {
          lower: Math.max(-1, kappa - normalQuantile * standardError),
          upper: Math.min(1, kappa + normalQuantile * standardError),
        }),
  };
};

const sum = <Item>(items: readonly Item[], value: (item: Item) => number): number =>
  items.reduce((total, item) => total + value(item), 0);
