/** The figures that the bench ID promises, counted over all words instead of sampled. */
import { describe, expect, it } from 'vitest';
import { benchIdCode } from '../../../src/domain/bench-id/bench-id.ts';
import { choose, positionSets, sampleOfData, withErrors } from './word-damage.ts';

const zeroWord = new Array<number>(10).fill(0);

/** Words within distance 2e + s ≤ 4 of one codeword, seen through the 10 − s readable characters: Σ C(10 − s, e)·31^e. */
const sphere = (unreadable: number): number => {
  let size = 0;
  for (let errors = 0; 2 * errors + unreadable <= 4; errors += 1)
    size += choose(10 - unreadable, errors) * 31 ** errors;
  return size;
};

describe('the distance between bench IDs', () => {
  it('adds up: the check symbols of a sum are the sum of the check symbols', () => {
    const words = sampleOfData(400).map((data) => benchIdCode.encode(data));
    for (let i = 1; i < words.length; i += 1) {
      const sum = withErrors(words[i]!, [...zeroWord.keys()], words[i - 1]!);
      expect(benchIdCode.encode(sum.slice(0, 6))).toEqual(sum);
    }
  });

  it('is five characters or more between any two of the 2^30 IDs, and exactly as often as theory says', () => {
    const checksOf = Array.from({ length: 6 }, (_, position) =>
      Array.from({ length: 32 }, (_, value) =>
        benchIdCode
          .encode(zeroWord.slice(0, 6).with(position, value))
          .slice(6)
          .reduce((packed, check) => (packed << 5) | check, 0),
      ),
    );
    const weightOf = Uint8Array.from({ length: 32 ** 4 }, (_, packed) =>
      [0, 5, 10, 15].reduce((weight, shift) => weight + (((packed >> shift) & 31) === 0 ? 0 : 1), 0),
    );
    const counted = new Array<number>(11).fill(0);
    const walk = (position: number, packed: number, weight: number): void => {
      const checks = checksOf[position]!;
      for (let value = 0; value < 32; value += 1) {
        const nextPacked = packed ^ checks[value]!;
        const nextWeight = weight + (value === 0 ? 0 : 1);
        if (position < 5) walk(position + 1, nextPacked, nextWeight);
        else counted[nextWeight + weightOf[nextPacked]!]! += 31;
      }
    };
    // One in 31 of the codewords but zero: those whose first symbol other than 0 is 1; the others are their multiples.
    for (let leading = 0; leading < 5; leading += 1) walk(leading + 1, checksOf[leading]![1]!, 1);
    counted[1 + weightOf[checksOf[5]![1]!]!]! += 31;

    // Weights of an MDS code, MacWilliams and Sloane, The Theory of Error-Correcting Codes, ch. 11 §3, from memory:
    // A(w) = C(n, w) · Σ (−1)^j · C(w, j) · (q^(w − d + 1 − j) − 1) for j = 0 … w − d.
    const theory = zeroWord.concat(0).map((_, weight) => {
      let sum = 0;
      for (let j = 0; j <= weight - 5; j += 1)
        sum += (-1) ** j * choose(weight, j) * (32 ** (weight - 4 - j) - 1);
      return choose(10, weight) * sum;
    });
    expect(counted).toEqual(theory);
    expect(counted.slice(0, 5)).toEqual([0, 0, 0, 0, 0]);
    expect(counted.reduce((left, right) => left + right)).toBe(32 ** 6 - 1);
  });
});

describe('how many words that are no ID become a suggestion', () => {
  // Words that differ by a codeword decode alike, so words with six zeros for data stand for all of them; multiples of a
  // word decode alike, so those whose first check symbol other than 0 is 1 stand for their 31 multiples.
  it.each([
    [0, 43_556, 1_048_576],
    [1, 280, 32_768],
    [2, 249, 1_024],
    [3, 1, 32],
    [4, 1, 1],
  ])('where %i of ten characters are unreadable: %i in %i', (unreadable, suggestions, words) => {
    expect(words).toBe(32 ** (4 - unreadable));
    const erasures = [6, 7, 8, 9].slice(4 - unreadable);
    let decoded = 0;
    for (let packed = 0; packed < words; packed += 1) {
      const checks = [15, 10, 5, 0].map((shift) => (packed >> shift) & 31).slice(unreadable);
      const leading = checks.find((check) => check !== 0) ?? 0;
      if (leading > 1) continue;
      const word = [0, 0, 0, 0, 0, 0, ...checks, ...erasures.map(() => 0)];
      if (benchIdCode.decode(word, erasures).ok) decoded += leading === 0 ? 1 : 31;
    }
    expect(decoded).toBe(suggestions);
    expect(sphere(unreadable)).toBe(suggestions);
  });

  it('for IDs with three wrong characters: 78,120 in 3,574,920, and never the ID that was meant', () => {
    let patterns = 0;
    let suggestions = 0;
    for (const positions of positionSets(10, 3)) {
      for (let second = 1; second < 32; second += 1) {
        for (let third = 1; third < 32; third += 1) {
          // A first error of 1 stands for all 31: the other patterns are its multiples.
          const decoding = benchIdCode.decode(withErrors(zeroWord, positions, [1, second, third]));
          patterns += 31;
          if (!decoding.ok) continue;
          suggestions += 31;
          if (decoding.codeword.every((value) => value === 0)) expect.fail(`restored at ${positions}`);
        }
      }
    }
    // Each codeword of weight five is within two characters of C(5, 3) words of weight three, and of no others.
    const weightFive = choose(10, 5) * 31;
    expect(patterns).toBe(choose(10, 3) * 31 ** 3);
    expect(suggestions).toBe(weightFive * choose(5, 3));
    expect([suggestions, patterns]).toEqual([78_120, 3_574_920]);
  });
});
