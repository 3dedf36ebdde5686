/** The bench IDs that fit best to what is known of each of the ten characters, weighed as codewords of the Reed–Solomon code. */
import {
  benchIdAlphabet,
  benchIdCheckSymbols,
  benchIdCode,
  benchIdDataSymbols,
} from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';

export const benchIdLength = benchIdDataSymbols + benchIdCheckSymbols;
export const alphabetSize = benchIdAlphabet.length;

/** Log likelihoods by position and symbol value, ten times thirty-two, each position up to a part of its own. */
export type Likelihoods = Float32Array;

export const noLikelihoods = (): Likelihoods => new Float32Array(benchIdLength * alphabetSize);

/** A bench ID and the sum of its ten log likelihoods. */
export interface Weighed {
  readonly benchId: BenchId;
  readonly score: number;
}

/** Leaves of the search; with the bound, far fewer are needed wherever six positions are known at all. */
const mostLeaves = 400_000;

/**
 * The best `count` codewords, the best first.
 *
 * Any six positions of a codeword give the other four (the code is maximum distance separable). So the values of the six
 * clearest positions are tried in the order of their loss against the best there, the other four follow, and a branch is
 * left where even the best values elsewhere would not reach the list (ordered statistics decoding with an exact bound;
 * M. P. C. Fossorier and S. Lin, IEEE Trans. Inf. Theory 41 (1995), from memory).
 */
export const bestCodewords = (likelihoods: Likelihoods, count: number): readonly Weighed[] => {
  const positions = Array.from({ length: benchIdLength }, (_none, position) =>
    rankedAt(likelihoods, position),
  ).sort((a, b) => b.margin - a.margin);
  const known = positions.slice(0, benchIdDataSymbols);
  const derived = positions.slice(benchIdDataSymbols);
  const derivedBest = derived.reduce((sum, { best }) => sum + best, 0);
  const products = derivation(
    known.map(({ position }) => position),
    derived.map(({ position }) => position),
  );
  const found: { symbols: Uint8Array; score: number }[] = [];
  const least = (): number =>
    found.length < count ? Number.NEGATIVE_INFINITY : (found.at(-1)?.score ?? Number.NEGATIVE_INFINITY);
  const chosen = new Uint8Array(benchIdLength);
  const sums = Array.from({ length: benchIdDataSymbols + 1 }, () => new Uint8Array(benchIdCheckSymbols));
  const restBest = known.map((_each, depth) =>
    known.slice(depth + 1).reduce((sum, { best }) => sum + best, derivedBest),
  );
  let leaves = 0;

  const keep = (score: number): void => {
    if (score <= least()) return;
    found.push({ symbols: chosen.slice(), score });
    found.sort((a, b) => b.score - a.score);
    if (found.length > count) found.pop();
  };

  const descend = (depth: number, score: number): void => {
    const at = known[depth];
    const sum = sums[depth];
    if (at === undefined || sum === undefined) {
      leaves += 1;
      let total = score;
      for (const [index, { position }] of derived.entries()) {
        const symbol = sum?.[index] ?? 0;
        chosen[position] = symbol;
        total += likelihoods[position * alphabetSize + symbol] ?? 0;
      }
      keep(total);
      return;
    }
    const next = sums[depth + 1];
    for (const symbol of at.order) {
      const reached = score + (likelihoods[at.position * alphabetSize + symbol] ?? 0);
      if (reached + (restBest[depth] ?? 0) <= least() || leaves >= mostLeaves) return;
      chosen[at.position] = symbol;
      for (let index = 0; index < benchIdCheckSymbols; index += 1)
        if (next !== undefined)
          next[index] =
            (sum[index] ?? 0) ^
            (products[(depth * benchIdCheckSymbols + index) * alphabetSize + symbol] ?? 0);
      descend(depth + 1, reached);
    }
  };
  descend(0, 0);
  return found.map(({ symbols, score }) => ({ benchId: benchIdOf(symbols), score }));
};

const rankedAt = (likelihoods: Likelihoods, position: number) => {
  const row = likelihoods.subarray(position * alphabetSize, (position + 1) * alphabetSize);
  const order = [...row.keys()].sort((a, b) => (row[b] ?? 0) - (row[a] ?? 0));
  const best = row[order[0] ?? 0] ?? 0;
  return { position, order, best, margin: best - (row[order[1] ?? 0] ?? 0) };
};

const derivations = new Map<string, Uint8Array>();

/** What each value at each of the six positions adds to the values at the other four: by position, other position, value. */
const derivation = (known: readonly number[], derived: readonly number[]): Uint8Array => {
  const key = `${known.join()} ${derived.join()}`;
  const done = derivations.get(key);
  if (done !== undefined) return done;
  const products = new Uint8Array(benchIdDataSymbols * benchIdCheckSymbols * alphabetSize);
  for (const [depth, position] of known.entries())
    for (let symbol = 0; symbol < alphabetSize; symbol += 1) {
      const word = Array<number>(benchIdLength).fill(0);
      word[position] = symbol;
      const decoding = benchIdCode.decode(word, derived);
      if (!decoding.ok) throw new Error('Six positions of a codeword give the other four.');
      for (const [index, other] of derived.entries())
        products[(depth * benchIdCheckSymbols + index) * alphabetSize + symbol] =
          decoding.codeword[other] ?? 0;
    }
  if (derivations.size > 200) derivations.clear();
  derivations.set(key, products);
  return products;
};

const benchIdOf = (symbols: Uint8Array): BenchId =>
  Array.from(symbols, (symbol) => benchIdAlphabet.charAt(symbol)).join('') as BenchId;

/** The sum of the log likelihoods of a bench ID's characters. */
export const scoreOf = (likelihoods: Likelihoods, benchId: BenchId): number => {
  let score = 0;
  for (let position = 0; position < benchIdLength; position += 1) {
    const symbol = benchIdAlphabet.indexOf(benchId.charAt(position));
    score += likelihoods[position * alphabetSize + symbol] ?? 0;
  }
  return score;
};

/** The best sum that any ten characters have, codeword or not. */
export const bestScore = (likelihoods: Likelihoods): number => {
  let score = 0;
  for (let position = 0; position < benchIdLength; position += 1)
    score += Math.max(...likelihoods.subarray(position * alphabetSize, (position + 1) * alphabetSize));
  return score;
};
