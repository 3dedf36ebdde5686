/** Whether the name of a maker or of a model in a notice is the one of the register: names are written in many ways. */
import type { MatchLevel } from './match-level.ts';
import { canBeBoth } from './reading.ts';
import { anyRun, folded, isWhole, signsOf } from './signs.ts';

/**
 * Certain where letters and digits are the same, or all that the notice writes with `?` and `*` is there. Possible where one begins with all words of the other, as *Lode 6* and
 * *Lode 6 SS*; where a letter would have to be taken for a digit; and where what can be read may be it.
 */
export const matchName = (seen: string, named: string): MatchLevel => {
  const signs = signsOf(seen);
  const wanted = signsOf(named);
  if (isWhole(signs) && isWhole(wanted)) return matchWhole(seen, named);
  if (isWhole(signs) && canBeBoth(signs, wanted, 'as given')) return 'certain';
  return canBeBoth([...signs, anyRun], wanted, 'loosely') || canBeBoth(signs, [...wanted, anyRun], 'loosely')
    ? 'possible'
    : 'no';
};

const matchWhole = (seen: string, named: string): MatchLevel => {
  const one = wordsOf(seen);
  const other = wordsOf(named);
  if (one.join('') === other.join('')) return 'certain';
  if (foldedText(one) === foldedText(other)) return 'possible';
  const [shorter, longer] = one.length < other.length ? [one, other] : [other, one];
  return foldedText(shorter) === foldedText(longer.slice(0, shorter.length)) ? 'possible' : 'no';
};

/** Runs of letters and runs of digits. */
const wordsOf = (text: string): readonly string[] =>
  text
    .normalize('NFKD')
    .toUpperCase()
    .replace(/\p{M}/gu, '')
    .match(/\p{N}+|\p{L}+/gu) ?? [];

const foldedText = (words: readonly string[]): string => Array.from(words.join(' '), folded).join('');
