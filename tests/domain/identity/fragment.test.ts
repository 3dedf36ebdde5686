/** What is left of a text, and how probable it is that it is left of a given one. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { characters, columnOf, seenAs } from '../../../src/domain/identity/character.ts';
import {
  comparable,
  knownText,
  parseFragment,
  probabilityOfFragment,
} from '../../../src/domain/identity/fragment.ts';

const probability = (fragment: string, text: string): number =>
  probabilityOfFragment(parseFragment(fragment), knownText(comparable(text)));

describe('the reading of one character', () => {
  test('what it is taken down as makes one over all characters', () => {
    for (const [index] of characters.entries()) {
      const sum = columnOf(index).reduce((total, each) => total + each, 0);
      // The last of the 37 is any sign that is neither letter nor digit, beside the 36 that make one.
      expect(sum - columnOf(index).at(-1)!).toBeCloseTo(1, 9);
    }
  });

  test('5 is taken for S in three of four confusions: 0.01 · 3/4 + 0.002 / 36', () => {
    expect(seenAs('5', 'S')).toBeCloseTo(0.0075 + 0.0000556, 7);
  });
});

describe('a fragment of a text', () => {
  test('of one sign on one place is its own reading, and twice one overlooked beside one invented', () => {
    // 0.998 · 0.00755556 + 2 · 0.001 · 0.001 / 36
    expect(probability('S', '5')).toBeCloseTo(0.0075405, 7);
  });

  test('says nothing where it could not be read', () => {
    expect(probability('????', 'AB12')).toBeCloseTo(0.998 ** 4, 3);
  });

  test('takes a run for any number of characters, each number as probable as another', () => {
    // 3 characters, 4 numbers of them from none to three: 1/4; or up to two, and the last overlooked: 2 · 0.001 / 4.
    expect(probability('*', 'AB1')).toBeCloseTo(1 / 4 + 0.0005, 5);
  });

  test('does not mind case, hyphens and spaces', () => {
    expect(probability('n2 18 10?4', 'N2-18-1074')).toBe(probability('N2-18-10?4', 'n2181074'));
  });

  test('is a probability whatever stands in it', () => {
    const text = fc.string({ unit: fc.constantFrom(...'0128BSQ?*-Ñ'), maxLength: 12 });
    fc.assert(
      fc.property(text, text, (fragment, whole) => {
        const value = probability(fragment, whole.replace(/[?*]/g, ''));
        expect(value).toBeGreaterThanOrEqual(0);
        expect(value).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });
});
