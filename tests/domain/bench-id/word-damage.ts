/** Words, and every way to damage them, for the tests of the code of the bench ID. */
import fc from 'fast-check';

export const symbol = fc.integer({ min: 0, max: 31 });
export const sixSymbols = fc.array(symbol, { minLength: 6, maxLength: 6 });

/** A fixed sample of six-symbol data, the same in every run. */
export const sampleOfData = (size: number): readonly (readonly number[])[] =>
  fc.sample(sixSymbols, { numRuns: size, seed: 31 });

/** Every set of `size` positions out of 0 … `length` − 1, ascending. */
export const positionSets = (length: number, size: number): readonly (readonly number[])[] => {
  if (size === 0) return [[]];
  return Array.from({ length }, (_, last) => last).flatMap((last) =>
    positionSets(last, size - 1).map((others) => [...others, last]),
  );
};

/** The word with each of `errors` added (exclusive or) at the position of the same rank. */
export const withErrors = (
  word: readonly number[],
  positions: readonly number[],
  errors: readonly number[],
): number[] => {
  const damaged = [...word];
  positions.forEach((position, rank) => {
    damaged[position] = damaged[position]! ^ errors[rank]!;
  });
  return damaged;
};

export const distance = (left: ArrayLike<unknown>, right: ArrayLike<unknown>): number =>
  Array.from(left).filter((item, i) => item !== right[i]).length;

/** n choose k. */
export const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
