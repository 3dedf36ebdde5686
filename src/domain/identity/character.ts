/** Letters and digits on a worn label, and which is taken for which: a confusion matrix, as data. */
import { characterRates } from './error-rates.ts';

/**
 * Characters that look alike when half of them is worn off, and how readily one is taken for the other (3 easily, 2 often,
 * 1 sometimes); each pair counts both ways.
 *
 * Common practice, no source: the pairs are those that lists of ambiguous characters name; the numbers are ours.
 */
export const confusablePairs: readonly (readonly [pair: string, readiness: 1 | 2 | 3])[] = [
  ['0O', 3],
  ['0D', 2],
  ['0Q', 2],
  ['OD', 2],
  ['OQ', 3],
  ['DQ', 1],
  ['OC', 1],
  ['0C', 1],
  ['CG', 2],
  ['1I', 3],
  ['1L', 2],
  ['IL', 2],
  ['17', 2],
  ['1T', 1],
  ['IT', 1],
  ['7T', 1],
  ['1J', 1],
  ['IJ', 1],
  ['5S', 3],
  ['56', 1],
  ['8B', 3],
  ['83', 2],
  ['86', 1],
  ['80', 1],
  ['89', 1],
  ['B3', 1],
  ['BR', 1],
  ['BE', 1],
  ['2Z', 3],
  ['27', 1],
  ['7Z', 1],
  ['6G', 3],
  ['60', 1],
  ['6B', 1],
  ['9G', 1],
  ['90', 1],
  ['4A', 2],
  ['49', 1],
  ['4H', 1],
  ['EF', 2],
  ['PR', 2],
  ['PF', 1],
  ['UV', 2],
  ['VY', 2],
  ['U0', 1],
  ['KX', 2],
  ['MN', 2],
  ['NH', 1],
  ['MW', 1],
  ['VW', 1],
];

/** Digits, letters, and last whatever is neither. */
export const characters = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'] as const;
export const otherCharacter = characters.length;

/** Of the letters and digits that a random text is made of. */
export const randomCharacter = 1 / characters.length;

/** The index of a character by its code; everything else than a digit or a capital is one character. */
export const characterIndex = (code: number): number => {
  if (code >= 48 && code <= 57) return code - 48;
  return code >= 65 && code <= 90 ? code - 55 : otherCharacter;
};

const readiness = (there: string): ReadonlyMap<string, number> =>
  new Map(
    confusablePairs.flatMap(([pair, weight]): [string, number][] => {
      const [left = '', right = ''] = pair;
      return left === there ? [[right, weight]] : right === there ? [[left, weight]] : [];
    }),
  );

const { confused, wrong } = characterRates;

/** P(taken down as the character with this index), of one place of a text. */
export type Column = Float64Array;

const columns: readonly Column[] = [...characters, ''].map((there, index) => {
  const alike = readiness(there);
  const all = [...alike.values()].reduce((sum, weight) => sum + weight, 0);
  const column = new Float64Array(characters.length + 1).fill(wrong * randomCharacter);
  for (const [seen, weight] of alike) {
    const at = characterIndex(seen.charCodeAt(0));
    column[at] = (column[at] ?? 0) + (confused * weight) / all;
  }
  column[index] = (column[index] ?? 0) + 1 - wrong - (all > 0 ? confused : 0);
  return column;
});

/** How a character that is there, and is taken down as one that is read, is taken down. */
export const columnOf = (there: number): Column => columns[there] ?? new Float64Array(characters.length + 1);

/** The same of two characters by themselves. */
export const seenAs = (there: string, seen: string): number =>
  columnOf(characterIndex(there.charCodeAt(0)))[characterIndex(seen.charCodeAt(0))] ?? 0;
