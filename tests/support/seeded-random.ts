/** Random numbers that are the same in every run: mulberry32 (public domain, Tommy Ettinger; from memory). */
export interface SeededRandom {
  /** From 0 up to but not including 1. */
  next(): number;
  /** A whole number from `from` to `to`, both included. */
  whole(from: number, to: number): number;
  pick<Item>(items: readonly Item[]): Item;
  /** `count` different items, in random order. */
  sample<Item>(items: readonly Item[], count: number): Item[];
}

export const seededRandom = (seed: number): SeededRandom => {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  return {
    next,
    whole,
    pick: (items) => items[whole(0, items.length - 1)]!,
    sample: (items, count) => {
      const left = [...items];
      return Array.from(
        { length: Math.min(count, left.length) },
        () => left.splice(whole(0, left.length - 1), 1)[0]!,
      );
    },
  };
};
