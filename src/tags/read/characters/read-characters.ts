/** The printed bench ID in a strip of a picture in which its line runs level: how likely each character is at each of the ten places. */
import { benchIdAlphabet } from '../../../domain/bench-id/bench-id.ts';
import type { Field } from '../field.ts';
import { alphabetSize, benchIdLength, type Likelihoods, noLikelihoods } from '../soft-decode.ts';
import { bottomEm, letterRaster, topEm } from './letter-raster.ts';

export interface CharactersSought {
  /** Sizes of the em to try, in samples across and down. */
  readonly sizes: readonly { readonly across: number; readonly down: number }[];
  /** Where the first letter starts and the last ends, in samples; farther off at a cost. */
  readonly start: readonly [number, number];
  readonly end: readonly [number, number];
  /** Rows in which the baseline may lie. */
  readonly baseline: readonly [number, number];
}

export interface CharactersRead {
  readonly likelihoods: Likelihoods;
  /** How much better the best path is than bare material, for comparing sizes and places. */
  readonly score: number;
  /** Of each character of the best path: where it starts and its baseline. */
  readonly places: readonly { readonly x: number; readonly baseline: number; readonly character: string }[];
  readonly size: { readonly across: number; readonly down: number };
}

/**
 * The best reading of all sizes. `evidence` is, sample by sample, the log likelihood of ink over bare material. Characters
 * follow one another by their advance, give or take kerning; the baseline may rise or fall from one to the next by a row.
 */
export const readCharacters = (evidence: Field, sought: CharactersSought): CharactersRead | undefined =>
  bestOf(sought.sizes.map((size) => atSize(evidence, sought, size)));

const bestOf = (reads: readonly (CharactersRead | undefined)[]): CharactersRead | undefined =>
  reads.reduce((best, read) => ((read?.score ?? 0) > (best?.score ?? 0) ? read : best), undefined);

const slackCost = 0.5;
const riseCost = 0.7;
const edgeCost = 0.25;
const hyphenAfter = 5;
const alphabet = [...benchIdAlphabet];

interface Letter {
  readonly symbol: number;
  readonly advance: number;
  readonly scores: Float32Array;
}

const atSize = (
  evidence: Field,
  { start, end, baseline }: Pick<CharactersSought, 'start' | 'end' | 'baseline'>,
  size: { readonly across: number; readonly down: number },
): CharactersRead | undefined => {
  const columns = evidence.width;
  const [highest, lowest] = baseline.map(Math.round) as [number, number];
  const levels = lowest - highest + 1;
  const sums = summedArea({ ...evidence, values: evidence.values.map(ofClutter) });
  const letterAt = (character: string, symbol: number): Letter => {
    const raster = letterRaster(character, size.across, size.down);
    return {
      symbol,
      advance: raster.advance,
      scores: scoresOf(evidence, sums, raster, size.down, highest, levels),
    };
  };
  const letters = alphabet.map(letterAt);
  const hyphen = [letterAt('-', -1)];
  const choices = Array.from({ length: benchIdLength + 1 }, (_none, slot) =>
    slot === hyphenAfter ? hyphen : letters,
  );
  const slack = Math.max(1, Math.round(size.across * 0.05));
  const cells = columns * levels;
  const least = -1e9;

  const before: Float32Array[] = [];
  let entering: Float32Array = new Float32Array(cells).fill(least);
  for (let x = 0; x < columns; x += 1)
    entering.fill(-edgeCost * outside(x, start), x * levels, (x + 1) * levels);
  for (const choice of choices) {
    before.push(entering);
    const leaving = new Float32Array(cells).fill(least);
    for (const { advance, scores } of choice) {
      const step = Math.round(advance);
      for (let x = 0; x + step < columns; x += 1)
        for (let level = 0; level < levels; level += 1) {
          const from = entering[x * levels + level] ?? least;
          if (from <= least / 2) continue;
          const score = from + (scores[x * levels + level] ?? 0);
          const to = (x + step) * levels + level;
          if (score > (leaving[to] ?? 0)) leaving[to] = score;
        }
    }
    entering = spread(leaving, columns, levels, slack);
  }

  const after: Float32Array[] = choices.map(() => new Float32Array(0));
  let following: Float32Array = new Float32Array(cells);
  for (let x = 0; x < columns; x += 1)
    following.fill(-edgeCost * outside(x, end), x * levels, (x + 1) * levels);
  for (let slot = choices.length - 1; slot >= 0; slot -= 1) {
    after[slot] = following;
    const starting = new Float32Array(cells).fill(least);
    for (const { advance, scores } of choices[slot] ?? []) {
      const step = Math.round(advance);
      for (let x = 0; x + step < columns; x += 1)
        for (let level = 0; level < levels; level += 1) {
          const cell = x * levels + level;
          const score = (scores[cell] ?? 0) + (following[(x + step) * levels + level] ?? least);
          if (score > (starting[cell] ?? 0)) starting[cell] = score;
        }
    }
    following = spread(starting, columns, levels, slack);
  }

  const likelihoods = noLikelihoods();
  const places: { x: number; baseline: number; character: string }[] = [];
  let total = least;
  for (const [slot, choice] of choices.entries()) {
    const [entry, exit] = [before[slot], after[slot]];
    if (entry === undefined || exit === undefined) return undefined;
    let top = least;
    let place = { x: 0, baseline: 0, character: '-' };
    for (const { symbol, advance, scores } of choice) {
      const step = Math.round(advance);
      let most = least;
      for (let x = 0; x + step < columns; x += 1)
        for (let level = 0; level < levels; level += 1) {
          const cell = x * levels + level;
          const score =
            (entry[cell] ?? least) + (scores[cell] ?? 0) + (exit[(x + step) * levels + level] ?? least);
          if (score > most) {
            most = score;
            if (score > top) {
              top = score;
              place = {
                x,
                baseline: highest + level,
                character: symbol < 0 ? '-' : (alphabet[symbol] ?? ''),
              };
            }
          }
        }
      if (symbol >= 0) likelihoods[(slot < hyphenAfter ? slot : slot - 1) * alphabetSize + symbol] = most;
    }
    places.push(place);
    total = top;
  }
  return total <= least / 2 ? undefined : { likelihoods, score: total, places, size };
};

const outside = (x: number, [from, to]: readonly [number, number]): number => Math.max(0, from - x, x - to);

/** The score of a letter that starts at each column with its baseline at each level, by column and level. */
const scoresOf = (
  evidence: Field,
  sums: Float64Array,
  { columns, rows, ink, advance }: ReturnType<typeof letterRaster>,
  emRows: number,
  highest: number,
  levels: number,
): Float32Array => {
  const { width, height, values } = evidence;
  const top = Math.round(topEm * emRows);
  const margin = Math.round(0.1 * emRows);
  const depth = Math.round(bottomEm * emRows);
  const offsets: number[] = [];
  const shares: number[] = [];
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const share = ink[row * columns + column] ?? 0;
      if (share < 0.05) continue;
      offsets.push(row * width + column);
      shares.push(share);
    }
  const offset = Int32Array.from(offsets);
  const share = Float32Array.from(shares);
  const box = Math.round(advance);
  const scores = new Float32Array(width * levels).fill(-1e6);
  for (let level = 0; level < levels; level += 1) {
    const firstRow = highest + level - top;
    if (firstRow < 0 || firstRow + rows > height) continue;
    const boxTop = Math.max(0, firstRow - margin);
    const boxBottom = Math.min(height, highest + level + depth + margin);
    for (let x = 0; x + columns <= width; x += 1) {
      const at = firstRow * width + x;
      let score = 0;
      for (let index = 0; index < offset.length; index += 1)
        score += (share[index] ?? 0) * (values[at + (offset[index] ?? 0)] ?? 0);
      const all = areaOf(sums, width, x, boxTop, x + box, boxBottom);
      scores[x * levels + level] = score - all;
    }
  }
  return scores;
};

/**
 * What is there where no letter is: each sample ink or bare material by the toss of a coin. A dark ground is then no letter,
 * and of two places the one is better that explains more samples.
 */
const ofClutter = (evidence: number): number => Math.log(0.5 + 0.5 * Math.exp(evidence));

const summedArea = ({ width, height, values }: Field): Float64Array => {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y += 1) {
    let row = 0;
    for (let x = 0; x < width; x += 1) {
      row += values[y * width + x] ?? 0;
      sums[(y + 1) * (width + 1) + x + 1] = (sums[y * (width + 1) + x + 1] ?? 0) + row;
    }
  }
  return sums;
};

const areaOf = (
  sums: Float64Array,
  width: number,
  left: number,
  top: number,
  right: number,
  bottom: number,
): number => {
  const upper = top * (width + 1);
  const lower = bottom * (width + 1);
  const within = (sums[lower + right] ?? 0) - (sums[lower + left] ?? 0);
  return within - (sums[upper + right] ?? 0) + (sums[upper + left] ?? 0);
};

/** The best among neighbouring columns and levels, less the cost of the step. */
const spread = (cells: Float32Array, columns: number, levels: number, slack: number): Float32Array => {
  const across = new Float32Array(cells.length);
  for (let x = 0; x < columns; x += 1)
    for (let level = 0; level < levels; level += 1) {
      let most = Number.NEGATIVE_INFINITY;
      for (let step = Math.max(-slack, -x); step <= slack && x + step < columns; step += 1)
        most = Math.max(most, (cells[(x + step) * levels + level] ?? 0) - slackCost * Math.abs(step));
      across[x * levels + level] = most;
    }
  const result = new Float32Array(cells.length);
  for (let x = 0; x < columns; x += 1)
    for (let level = 0; level < levels; level += 1) {
      const at = x * levels + level;
      let most = across[at] ?? 0;
      if (level > 0) most = Math.max(most, (across[at - 1] ?? 0) - riseCost);
      if (level + 1 < levels) most = Math.max(most, (across[at + 1] ?? 0) - riseCost);
      result[at] = most;
    }
  return result;
};
