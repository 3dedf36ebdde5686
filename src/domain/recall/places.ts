/** A range of serial numbers as places, one for each character, for every length that its numbers may be written in. */
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

export interface Lengths {
  readonly shortest: number;
  readonly longest: number;
}

/** Every way to write the parts with as many characters in all as `lengths` allow. */
export function* writings(
  parts: readonly PatternPart[],
  writing: Writing,
  { shortest, longest }: Lengths,
  index = 0,
): Generator<readonly Place[]> {
  const part = parts[index];
  if (part === undefined) {
    if (shortest <= 0 && longest >= 0) yield [];
    return;
  }
  const least = parts.slice(index + 1).reduce((sum, { kind, first }) => sum + shortestOf(kind, first), 0);
  const [from, until] = lengthsOf(part, writing);
  for (let length = from; length <= Math.min(until, longest - least); length += 1) {
    const places = placesOf(part, length, writing);
    if (places === undefined) continue;
    const rest = { shortest: shortest - length, longest: longest - length };
    for (const others of writings(parts, writing, rest, index + 1)) yield [...places, ...others];
  }
}

/** The fewest and the most characters in which the part may be written. */
const lengthsOf = ({ kind, first, last }: PatternPart, writing: Writing): readonly [number, number] => {
  if (kind === 'letters') return [first.length, first.length];
  return writing === 'loosely'
    ? [1, Number.POSITIVE_INFINITY]
    : [Math.min(first.length, last.length), Math.max(first.length, last.length)];
};

const shortestOf = (kind: PatternPart['kind'], first: string): number =>
  kind === 'digits' ? 1 : first.length;

/**
 * As given, a number has as many digits as in the first or in the last serial number, filled up with zeros; between the two
 * lengths it has no zeros in front.
 */
const placesOf = (
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
