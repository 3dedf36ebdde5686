/** Which few causes make most of the removals. */

export interface ParetoBar<Key extends string> {
  readonly key: Key;
  readonly count: number;
  /** Of all. */
  readonly share: number;
  /** Of all, with those before it. */
  readonly cumulative: number;
}

/** The most frequent first; of as many, the one that occurs first. */
export const pareto = <Key extends string>(keys: readonly Key[]): readonly ParetoBar<Key>[] => {
  const counts = new Map<Key, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  let before = 0;
  return [...counts]
    .sort(([, one], [, other]) => other - one)
    .map(([key, count]) => {
      before += count;
      return { key, count, share: count / keys.length, cumulative: before / keys.length };
    });
};
