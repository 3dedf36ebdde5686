/** Seeded random numbers: the same seed and purpose give the same numbers on every machine. */

export interface Random {
  /** From 0 up to, not including, 1. */
  readonly next: () => number;
  readonly between: (low: number, high: number) => number;
  /** A whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  /** Of the normal distribution with mean 0 and standard deviation 1. */
  readonly normal: () => number;
  readonly chance: (share: number) => boolean;
}

/** One stream for each purpose, so that more of one kind of wear does not move another. Mulberry32, public domain. */
export const randomOf = (seed: number, purpose: string): Random => {
  let state = mixed(seed, purpose);
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let value = Math.imul(state ^ (state >>> 15), 1 | state);
    value = (value + Math.imul(value ^ (value >>> 7), 61 | value)) ^ value;
    return ((value ^ (value >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    whole: (low, high) => low + Math.floor((high - low + 1) * next()),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    chance: (share) => next() < share,
  };
};

/** FNV-1a, 32 bits, over the purpose and then the four bytes of the seed. */
const mixed = (seed: number, purpose: string): number => {
  let hash = 0x811c9dc5;
  const take = (byte: number): void => {
    hash = Math.imul(hash ^ byte, 0x01000193);
  };
  for (const character of purpose) take(character.charCodeAt(0) & 0xff);
  for (const shift of [0, 8, 16, 24]) take((seed >>> shift) & 0xff);
  return hash;
};
