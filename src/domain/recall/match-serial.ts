/** Whether a serial number, or what can be read of one, is among those that a notice names. */
import type { MatchLevel } from './match-level.ts';
import { lengthsOf, type Place, placesOf } from './places.ts';
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

/** Bits of a bound: as in the first serial number until here, as in the last. */
const asFirst = 1;
const asLast = 2;
const bounds = [0, asFirst, asLast, asFirst | asLast] as const;

/** For each sign that comes next, one bit for every bound under which a reading arrives there. */
type Reached = Uint8Array;

/**
 * Whether some reading of the signs is in the range, part by part: each number in every length in which it may be written.
 * A run is taken to hide at most as many characters as the pattern has: more of them would only be zeros in front, or as
 * good as fewer.
 */
const isInRange = (signs: readonly Sign[], { parts, openEnd }: Range, writing: Writing): boolean => {
  const written = openEnd ? 'as given' : writing;
  const hidden = signs.includes(anyRun) ? longestAsGiven(parts) : 0;
  const start = new Uint8Array(signs.length + 1);
  start[0] = 1 << (asFirst | asLast);
  skip(start, signs, writing);
  let reached: Reached = start;
  for (const part of parts) {
    const [from, until] = lengthsOf(part, written, signs.length + hidden);
    let after: Reached | undefined;
    for (let length = from; length <= until; length += 1) {
      const places = placesOf(part, length, written);
      const through = places && readThrough(reached, signs, places, writing);
      if (through !== undefined) after = after === undefined ? through : either(after, through);
    }
    if (after === undefined) return false;
    reached = after;
  }
  return openEnd || reached[signs.length] !== 0;
};

const longestAsGiven = (parts: Range['parts']): number =>
  parts.reduce((sum, { first, last }) => sum + Math.max(first.length, last.length), 0);

const either = (one: Reached, other: Reached): Reached =>
  one.map((mask, index) => mask | (other[index] ?? 0));

/** `undefined` where no reading stands in these places. */
const readThrough = (
  before: Reached,
  signs: readonly Sign[],
  places: readonly Place[],
  writing: Writing,
): Reached | undefined => {
  let reached = before;
  for (const place of places) {
    const next = new Uint8Array(reached.length);
    let isAny = false;
    for (let index = 0; index < signs.length; index += 1) {
      const sign = signs[index];
      const mask = reached[index] ?? 0;
      const after = mask === 0 || sign === undefined ? 0 : boundsAfter(sign, place, mask, writing);
      if (after === 0) continue;
      const then = sign === anyRun ? index : index + 1;
      next[then] = (next[then] ?? 0) | after;
      isAny = true;
    }
    if (!isAny) return undefined;
    skip(next, signs, writing);
    reached = next;
  }
  return reached;
};

/** A run may be empty, and as the maker writes it a character that cannot be read may be a mark that does not count. */
const skip = (reached: Reached, signs: readonly Sign[], writing: Writing): void => {
  for (const [index, sign] of signs.entries()) {
    if (sign === anyRun || (sign === unreadable && writing === 'as given'))
      reached[index + 1] = (reached[index + 1] ?? 0) | (reached[index] ?? 0);
  }
};

const boundsAfter = (
  sign: Sign,
  { kind, least, most, zeroAllowed }: Place,
  mask: number,
  writing: Writing,
): number => {
  let after = 0;
  for (const character of readingsOf(sign, kind, writing)) {
    if (!zeroAllowed && character === '0') continue;
    for (const bound of bounds) {
      if ((mask & (1 << bound)) === 0) continue;
      const isAsFirst = (bound & asFirst) !== 0;
      if (isAsFirst && least !== undefined && (least === 'none' || character < least)) continue;
      const isAsLast = (bound & asLast) !== 0 && most !== undefined;
      if (isAsLast && character > most) continue;
      after |=
        1 <<
        ((isAsFirst && character === least ? asFirst : 0) | (isAsLast && character === most ? asLast : 0));
    }
  }
  return after;
};

type Readings = Record<Place['kind'], Map<Sign, readonly string[]>>;
const known: Record<Writing, Readings> = {
  'as given': { digits: new Map(), letters: new Map() },
  loosely: { digits: new Map(), letters: new Map() },
};

/** The characters of that kind for which a sign may be read. */
const readingsOf = (sign: Sign, kind: Place['kind'], writing: Writing): readonly string[] => {
  const ofKind = known[writing][kind];
  const all =
    ofKind.get(sign) ?? [...charactersOf(kind)].filter((character) => isReadAs(sign, character, writing));
  ofKind.set(sign, all);
  return all;
};
