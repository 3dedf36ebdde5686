import { describe, expect, test } from 'vitest';
import { benchIdAlphabet, benchIdFrom, parseBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import {
  alphabetSize,
  benchIdLength,
  bestCodewords,
  bestScore,
  noLikelihoods,
  scoreOf,
} from '../../../src/tags/read/soft-decode.ts';

/** mulberry32, so that every run has the same numbers. */
const randomOf = (seed: number) => {
  let state = seed;
  return (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
};

const randomId = (random: () => number) =>
  benchIdFrom(Array.from({ length: 6 }, () => Math.floor(32 * random())));

describe('the best codewords', () => {
  test('are those that trying every word of a few characters finds', () => {
    const random = randomOf(1);
    for (let trial = 0; trial < 12; trial += 1) {
      const likelihoods = noLikelihoods().fill(-1000);
      const ids = [randomId(random), randomId(random), randomId(random)];
      for (const id of ids)
        for (let position = 0; position < benchIdLength; position += 1)
          likelihoods[position * alphabetSize + benchIdAlphabet.indexOf(id.charAt(position))] =
            -20 * random();
      let words = [''];
      for (let position = 0; position < benchIdLength; position += 1) {
        const letters = [...new Set(ids.map((id) => id.charAt(position)))];
        words = words.flatMap((word) => letters.map((letter) => word + letter));
      }
      const brute = words
        .filter((word) => parseBenchId(word).kind === 'exact')
        .map((word) => ({ word, score: scoreOf(likelihoods, word as (typeof ids)[0]) }))
        .sort((a, b) => b.score - a.score);
      const found = bestCodewords(likelihoods, 3);
      expect(found[0]?.benchId).toBe(brute[0]?.word);
      expect(found[0]?.score).toBeCloseTo(brute[0]?.score ?? 0, 3);
      expect(found[1]?.score).toBeGreaterThanOrEqual((brute[1]?.score ?? 0) - 1e-3);
    }
  });

  test('are never worse than the best of a register', () => {
    const random = randomOf(2);
    const register = Array.from({ length: 2000 }, () => randomId(random));
    for (let trial = 0; trial < 10; trial += 1) {
      const likelihoods = noLikelihoods().map(() => -4 * random());
      const registered = Math.max(...register.map((id) => scoreOf(likelihoods, id)));
      const [best] = bestCodewords(likelihoods, 2);
      expect(best?.score).toBeGreaterThanOrEqual(registered);
      expect(parseBenchId(best?.benchId ?? '').kind).toBe('exact');
    }
  });

  test('find an ID of which four characters say nothing and one says something else', () => {
    const random = randomOf(3);
    for (let trial = 0; trial < 20; trial += 1) {
      const id = randomId(random);
      const likelihoods = noLikelihoods();
      for (let position = 4; position < benchIdLength; position += 1)
        likelihoods[position * alphabetSize + benchIdAlphabet.indexOf(id.charAt(position))] = 6;
      likelihoods[4 * alphabetSize + ((benchIdAlphabet.indexOf(id.charAt(4)) + 9) % 32)] = 5;
      const [best, second] = bestCodewords(likelihoods, 2);
      expect(best?.benchId).toBe(id);
      expect((best?.score ?? 0) - (second?.score ?? 0)).toBeLessThan(6);
    }
  });

  test('lose nothing against the likeliest characters where those are a codeword', () => {
    const id = randomId(randomOf(4));
    const likelihoods = noLikelihoods();
    for (let position = 0; position < benchIdLength; position += 1)
      likelihoods[position * alphabetSize + benchIdAlphabet.indexOf(id.charAt(position))] = 3;
    expect(bestCodewords(likelihoods, 1)[0]?.score).toBeCloseTo(bestScore(likelihoods), 5);
  });
});
