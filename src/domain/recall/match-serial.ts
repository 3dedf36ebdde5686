/** Whether a serial number, or what can be read of one, is among those that a notice names. */
import type { MatchLevel } from './match-level.ts';
import { type Lengths, type Place, writings } from './places.ts';
import { canBeBoth, isReadAs, type Writing } from './reading.ts';
import { charactersOf, parseSerialSet, type SerialSet } from './serial-range.ts';
import { anyRun, isWhole, type Sign, unreadable } from './signs.ts';

export type SerialDoubt = 'unclear set' | 'unreadable' | 'written otherwise';
export interface SerialMatch {
  readonly level: MatchLevel;
  /** Why it is only possible. */
  readonly doubt?: SerialDoubt;
}

/**
 * Certain where every reading is in the set as the maker writes it; possible where one of all readings is, or would be with
 * other zeros in front of a number, or with a letter taken for a digit. A character that cannot be read may also be a
 * hyphen or another mark where the rest is as the maker writes it.
 */
export const matchSerial = (signs: readonly Sign[], written: string): SerialMatch =>
  matchSet(signs, parseSerialSet(written));

/** The same for a set that was understood before: a whole register is held against it. */
export const matchSet = (signs: readonly Sign[], set: SerialSet): SerialMatch => {
  if (set.kind === 'unclear') return { level: 'possible', doubt: 'unclear set' };
  const asGiven =
    set.kind === 'mask' ? canBeBoth(signs, set.signs, 'as given') : isInRange(signs, set, 'as given');
  if (asGiven && (isWhole(signs) || isBeginningRead(signs, set))) return { level: 'certain' };
  if (asGiven) return { level: 'possible', doubt: 'unreadable' };
  const loosely =
    set.kind === 'mask' ? canBeBoth(signs, set.signs, 'loosely') : isInRange(signs, set, 'loosely');
  if (!loosely) return { level: 'no' };
  return { level: 'possible', doubt: isWhole(signs) ? 'written otherwise' : 'unreadable' };
};

/** Only the beginning matters, and all of it was read. */
const isBeginningRead = (signs: readonly Sign[], set: SerialSet): boolean => {
  if (set.kind === 'range') {
    if (!set.openEnd) return false;
    const length = set.parts.reduce((sum, { first }) => sum + first.length, 0);
    return signs.length > length && isWhole(signs.slice(0, length));
  }
  if (set.kind !== 'mask' || set.signs.indexOf(anyRun) !== set.signs.length - 1) return false;
  const length = set.signs.length - 1;
  return signs.length > length && isWhole(signs.slice(0, length));
};

type Range = Extract<SerialSet, { kind: 'range' }>;

const isInRange = (signs: readonly Sign[], range: Range, writing: Writing): boolean => {
  const { parts, openEnd } = range;
  for (const places of writings(parts, openEnd ? 'as given' : writing, lengthsFor(signs, range, writing)))
    if (canBe(signs, places, openEnd, writing)) return true;
  return false;
};

/** A run hides at most as many characters as the pattern has. */
const lengthsFor = (signs: readonly Sign[], { parts, openEnd }: Range, writing: Writing): Lengths => {
  const longestAsGiven = parts.reduce((sum, { first, last }) => sum + Math.max(first.length, last.length), 0);
  if (openEnd) return { shortest: longestAsGiven, longest: longestAsGiven };
  const runs = signs.filter((sign) => sign === anyRun).length;
  const marks = writing === 'as given' ? signs.filter((sign) => sign === unreadable).length : 0;
  const known = signs.length - runs;
  return { shortest: known - marks, longest: runs === 0 ? known : known + longestAsGiven };
};

/** Bits of a state: as in the first serial number until here, as in the last. */
const asFirst = 1;
const asLast = 2;
const states = 4;

/** Whether some reading of the signs stands in these places, within their bounds. */
const canBe = (
  signs: readonly Sign[],
  places: readonly Place[],
  openEnd: boolean,
  writing: Writing,
): boolean => {
  let reached = new Uint8Array((signs.length + 1) * states);
  reached[asFirst | asLast] = 1;
  skip(reached, signs, writing);
  for (const place of places) {
    const next = new Uint8Array(reached.length);
    for (const [state, isReached] of reached.entries()) {
      const sign = signs[Math.floor(state / states)];
      if (isReached === 0 || sign === undefined) continue;
      const index = Math.floor(state / states) + (sign === anyRun ? 0 : 1);
      for (const bound of boundsAfter(sign, place, state % states, writing)) next[index * states + bound] = 1;
    }
    if (!next.includes(1)) return false;
    skip(next, signs, writing);
    reached = next;
  }
  return openEnd ? reached.includes(1) : reached.subarray(signs.length * states).includes(1);
};

/** A run may be empty, and as the maker writes it a character that cannot be read may be a mark that does not count. */
const skip = (reached: Uint8Array, signs: readonly Sign[], writing: Writing): void => {
  for (const [index, sign] of signs.entries()) {
    if (sign !== anyRun && !(sign === unreadable && writing === 'as given')) continue;
    for (let bound = 0; bound < states; bound += 1)
      if (reached[index * states + bound] === 1) reached[(index + 1) * states + bound] = 1;
  }
};

function* boundsAfter(sign: Sign, place: Place, bound: number, writing: Writing): Generator<number> {
  const isAsFirst = (bound & asFirst) !== 0;
  const isAsLast = (bound & asLast) !== 0 && place.most !== undefined;
  if (isAsFirst && place.least === 'none') return;
  for (const character of charactersOf(place.kind)) {
    if (!place.zeroAllowed && character === '0') continue;
    if (!isReadAs(sign, character, writing)) continue;
    if (isAsFirst && place.least !== undefined && character < place.least) continue;
    if (isAsLast && place.most !== undefined && character > place.most) continue;
    yield (isAsFirst && character === place.least ? asFirst : 0) |
      (isAsLast && character === place.most ? asLast : 0);
  }
}
