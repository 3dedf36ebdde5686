/** A part of a range of serial numbers as places, one for each character, for a length in which it may be written. */
import type { Writing } from './reading.ts';
import { type PatternPart, significant } from './serial-range.ts';

/**
 * One character of a serial number in a range. `least` and `most` bind only while everything before was as in the first,
 * or the last, serial number; `undefined` is no bound, and `least: 'none'` no way on.
 */
export interface Place {
  readonly kind: PatternPart['kind'];
  readonly least: string | undefined;
  readonly most: string | undefined;
  readonly zeroAllowed: boolean;
}

/** The fewest and the most characters in which the part may be written, where no more than `room` can be. */
export const lengthsOf = (
  { kind, first, last }: PatternPart,
  writing: Writing,
  room: number,
): readonly [number, number] => {
  if (kind === 'letters') return [first.length, first.length];
  return writing === 'loosely'
    ? [1, room]
    : [Math.min(first.length, last.length), Math.max(first.length, last.length)];
};

/** A range is held against a whole register: its places are worked out once. */
const known = new WeakMap<PatternPart, Record<Writing, (readonly Place[] | 'none')[]>>();

/** `undefined` where the part is never written in that length. */
export const placesOf = (
  part: PatternPart,
  length: number,
  writing: Writing,
): readonly Place[] | undefined => {
  const ofPart = known.get(part) ?? { 'as given': [], loosely: [] };
  known.set(part, ofPart);
  const places = ofPart[writing][length] ?? makePlaces(part, length, writing) ?? 'none';
  ofPart[writing][length] = places;
  return places === 'none' ? undefined : places;
};

/**
 * As given, a number has as many digits as in the first or in the last serial number, filled up with zeros; between the two
 * lengths it has no zeros in front.
 */
const makePlaces = (
  { kind, first, last }: PatternPart,
  length: number,
  writing: Writing,
): readonly Place[] | undefined => {
  if (kind === 'letters') return length === first.length ? boundPlaces(kind, first, last, true) : undefined;
  const low = significant(first);
  const high = significant(last);
  const zeroAllowed = writing === 'loosely' || length === first.length || length === last.length;
  if (!zeroAllowed) {
    if (length < Math.min(first.length, last.length) || length > Math.max(first.length, last.length))
      return undefined;
  }
  const least = low.length > length ? undefined : low.padStart(length, '0');
  const most = high.length > length ? undefined : high.padStart(length, '0');
  const places = boundPlaces(kind, least ?? '0'.repeat(length), most ?? '9'.repeat(length), zeroAllowed);
  const [head, ...tail] = places;
  if (head === undefined) return undefined;
  return [
    {
      ...head,
      least: least === undefined ? 'none' : head.least,
      most: most === undefined ? undefined : head.most,
    },
    ...tail,
  ];
};

const boundPlaces = (
  kind: PatternPart['kind'],
  least: string,
  most: string,
  zeroAllowed: boolean,
): readonly Place[] =>
  Array.from(least, (character, index) => ({
    kind,
    least: character,
    most: most.charAt(index),
    zeroAllowed: zeroAllowed || index > 0,
  }));
