/** What is left of a text, and how probable it is that this is left of a given one. */
import { type Column, characterIndex, columnOf, randomCharacter } from './character.ts';
import { characterRates } from './error-rates.ts';

/** Letters and digits as they are compared: capitals, without accents, spaces and punctuation. */
export const comparable = (text: string): string =>
  text
    .normalize('NFKD')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/** A character that was read, by its index; one that could not be; or a run of unknown length. */
type Sign = number;
const unreadable: Sign = -1;
const run: Sign = -2;
export type Fragment = readonly Sign[];

/** Neighbouring runs are one run. */
export const parseFragment = (text: string): Fragment =>
  Array.from(
    text
      .normalize('NFKD')
      .toUpperCase()
      .replace(/[^\p{L}\p{N}?*]/gu, '')
      .replace(/\*+/g, '*'),
    (sign) => (sign === '?' ? unreadable : sign === '*' ? run : characterIndex(sign.charCodeAt(0))),
  );

/** The characters of it that were read, by their index, each once. */
export const readCharacters = (fragment: Fragment): readonly number[] => [
  ...new Set(fragment.filter((sign) => sign >= 0)),
];

/** P(fragment | a word of which nothing is known), of as many characters as the fragment has signs. */
export const probabilityOfWord = (fragment: Fragment): number =>
  randomCharacter ** fragment.filter((sign) => sign >= 0).length;

const { overlooked, invented } = characterRates;
const kept = 1 - overlooked - invented;

/** So many more characters overlooked than invented, or the other way round, are not looked for. */
const farthestShift = 3;

/**
 * P(fragment | text), given which characters could be read at all: where a character was not readable is taken as given
 * and says nothing. The text is a column for each of its places. Sums over all ways in which the signs may stand for the
 * places: each sign for one place, a place overlooked, a sign invented, and a run for any number of places from none to
 * all, each number as probable as another.
 */
export const probabilityOfFragment = (fragment: Fragment, text: readonly Column[]): number => {
  const { length } = text;
  const hasRun = fragment.includes(run);
  if (!hasRun && Math.abs(fragment.length - length) > farthestShift) return 0;
  let before = new Float64Array(length + 1);
  let after = new Float64Array(length + 1);
  before[0] = 1;
  for (let index = 0; index < fragment.length; index += 1) {
    const sign = fragment[index] ?? unreadable;
    const first = hasRun ? 0 : Math.max(0, index - farthestShift);
    const last = hasRun ? length : Math.min(length, index + farthestShift);
    overlook(before, first, last);
    after.fill(0);
    if (sign === run) spread(before, after);
    else step(before, after, first, Math.min(length, last + 1), sign, text);
    [before, after] = [after, before];
  }
  overlook(before, 0, length);
  return before[length] ?? 0;
};

const overlook = (row: Float64Array, first: number, last: number): void => {
  for (let place = first + 1; place <= last; place += 1) {
    row[place] = (row[place] ?? 0) + (row[place - 1] ?? 0) * overlooked;
  }
};

const spread = (before: Float64Array, after: Float64Array): void => {
  const share = 1 / before.length;
  let sum = 0;
  for (let place = 0; place < before.length; place += 1) {
    sum += before[place] ?? 0;
    after[place] = sum * share;
  }
};

/** One sign takes up the next place, or none where it was invented. */
const step = (
  before: Float64Array,
  after: Float64Array,
  first: number,
  last: number,
  sign: Sign,
  text: readonly Column[],
): void => {
  const isRead = sign >= 0;
  const made = invented * (isRead ? randomCharacter : 1);
  for (let place = first; place <= last; place += 1) {
    const seen = place === 0 ? 0 : isRead ? (text[place - 1]?.[sign] ?? 0) : 1;
    after[place] = (before[place - 1] ?? 0) * kept * seen + (before[place] ?? 0) * made;
  }
};

/** A text that is known, in comparable form. */
export const knownText = (text: string): readonly Column[] => {
  const columns = new Array<Column>(text.length);
  for (let place = 0; place < text.length; place += 1) {
    columns[place] = columnOf(characterIndex(text.charCodeAt(place)));
  }
  return columns;
};

/** A text of this length of which each place is like this. */
export const likeText = (length: number, column: Column): readonly Column[] =>
  new Array<Column>(length).fill(column);
