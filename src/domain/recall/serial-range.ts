/** The serial numbers that a notice names, in the maker's own pattern, as they were written in it. */
import { anyRun, digits, letters, type Sign, signsOf } from './signs.ts';

/** A run of letters or of digits: what it is in the first serial number of a range, and in the last. */
export interface PatternPart {
  readonly kind: 'letters' | 'digits';
  readonly first: string;
  readonly last: string;
}

/**
 * `range`: the parts are compared from the left, letters by the alphabet and digits as numbers. With `openEnd` only the
 * beginning is given, and anything may follow. `mask`: what was written with `?` and `*`. `unclear`: no pattern that could
 * be compared, so that every serial number may be meant.
 */
export type SerialSet =
  | { readonly kind: 'range'; readonly parts: readonly PatternPart[]; readonly openEnd: boolean }
  | { readonly kind: 'mask'; readonly signs: readonly Sign[] }
  | { readonly kind: 'unclear' };

const unclear: SerialSet = { kind: 'unclear' };

/** `B-0991…B-1010`, `B-0991 - B-1010`, `B-0991 to 1010`; a hyphen alone belongs to a serial number. */
const separator = /\s*(?:…|\.{2,}|–|—)\s*|\s+(?:-|to|through|until|a|al|hasta)\s+/u;

/** Never throws: what cannot be understood is unclear. */
export const parseSerialSet = (written: string): SerialSet => {
  const ends = written.trim().split(separator);
  const [first, last] = ends;
  if (first === undefined || ends.length > 2 || ends.some(isNoSerial)) return unclear;
  if (last !== undefined) return between(first, last);
  if (namesSeveral(first)) return unclear;
  return /[?*]/.test(first) ? { kind: 'mask', signs: signsOf(first) } : between(first, first);
};

/** Words, lists and other alphabets: what a person must read. */
const isNoSerial = (text: string): boolean =>
  !/^[A-Za-z0-9 ._/#?*-]+$/.test(text) || !/[A-Za-z0-9*]/.test(text) || /(?:^|\s)[a-z]+(?:\s|$)/.test(text);

/** `B-0991/B-1010` may be two serial numbers; `12/0991` is one. */
const namesSeveral = (text: string): boolean => {
  const [first, ...others] = text.split('/').map((piece) => kindsOf(partsOf(piece)));
  return first !== undefined && first.length > 1 && others.includes(first);
};

const kindsOf = (parts: readonly string[]): string =>
  parts.map((part) => (isDigits(part) ? '0' : 'A')).join('');

const between = (first: string, last: string): SerialSet => {
  const openEnd = first.endsWith(anyRun) && last.endsWith(anyRun);
  const from = openEnd ? first.slice(0, -1) : first;
  const until = openEnd ? last.slice(0, -1) : last;
  if (/[?*]/.test(from + until)) return unclear;
  const parts = paired(partsOf(from), partsOf(until));
  if (parts === undefined || !isInOrder(parts)) return unclear;
  return openEnd && parts.some(({ first: one, last: other }) => one.length !== other.length)
    ? unclear
    : { kind: 'range', parts, openEnd };
};

/** A mark parts two numbers, as in `N2-24-1000`: it does not count, but what stands on its sides are two numbers. */
const partsOf = (text: string): string[] => text.toUpperCase().match(/\d+|[A-Z]+/g) ?? [];

/** `B-0991…1010` says only the end of the last serial number: what is left out is as in the first. */
const paired = (from: readonly string[], written: readonly string[]): PatternPart[] | undefined => {
  if (from.length === 0 || written.length === 0 || written.length > from.length) return undefined;
  const until = [...from.slice(0, from.length - written.length), ...written];
  const parts: PatternPart[] = [];
  for (const [index, first] of from.entries()) {
    const last = until[index] ?? '';
    const kind = isDigits(first) ? 'digits' : 'letters';
    if (isDigits(last) !== isDigits(first)) return undefined;
    if (kind === 'letters' && first.length !== last.length) return undefined;
    parts.push({ kind, first, last });
  }
  return parts;
};

const isDigits = (part: string): boolean => digits.includes(part.charAt(0));

const isInOrder = (parts: readonly PatternPart[]): boolean => {
  for (const { kind, first, last } of parts) {
    const order = kind === 'digits' ? compareNumbers(first, last) : compareLetters(first, last);
    if (order !== 0) return order < 0;
  }
  return true;
};

/** Digits without the zeros in front. */
export const significant = (number: string): string => number.replace(/^0+(?=\d)/, '');

const compareNumbers = (one: string, other: string): number => {
  const left = significant(one);
  const right = significant(other);
  return left.length === right.length ? compareLetters(left, right) : left.length - right.length;
};

const compareLetters = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** Characters that a place of a part can have. */
export const charactersOf = (kind: PatternPart['kind']): string => (kind === 'digits' ? digits : letters);
