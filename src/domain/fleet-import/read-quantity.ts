/** Lengths, diameters and weights with or without a unit, as lists write them. */
import { metresPerFoot } from '../length.ts';
import { plainWords } from './cell.ts';
import type { ImportUnit } from './column-meaning.ts';
import type { ValueWords } from './import-words.ts';
import { numberReadings, plainNumber } from './read-number.ts';

/**
 * Exact by definition, in metres and kilograms: NIST Special Publication 811, appendix B.8 (1 ft = 0.3048 m, 1 in = 25.4 mm,
 * 1 lb = 0.453 592 37 kg).
 */
const sizes: Readonly<Record<ImportUnit, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  ft: metresPerFoot,
  in: 0.0254,
  kg: 1,
  lb: 0.45359237,
};

/** What a quantity can be, in metres or kilograms. Less than a thousandfold apart, so that it tells `1,500` from `1500`. */
export interface Bounds {
  readonly from: number;
  readonly to: number;
}
/** No cable lifeline is shorter or longer (common practice, no source). */
export const lengthBounds: Bounds = { from: 0.3, to: 200 };
/** Of a wire rope that a person can hook (common practice, no source). */
export const diameterBounds: Bounds = { from: 0.001, to: 0.03 };
/** Of a person with tools (common practice, no source). */
export const weightBounds: Bounds = { from: 10, to: 500 };

export type Quantity =
  | { readonly kind: 'quantity'; readonly value: number }
  /** A number without a unit, where none was chosen for the column. */
  | { readonly kind: 'unit needed' }
  | { readonly kind: 'not read' };

const notRead: Quantity = { kind: 'not read' };

const number = String.raw`(?:\d+ )?\d{1,3}\/\d{1,3}|\d+(?:[ '’]\d{3}(?!\d)|[.,]\d+)*|[.,]\d+`;
const amount = new RegExp(`^(${number})(.*)$`);

/** In metres or kilograms; `unit` is that of numbers without one. */
export const readQuantity = (
  text: string,
  { from, to }: Bounds,
  unit: ImportUnit | undefined,
  allowed: readonly ImportUnit[],
  words: ValueWords,
): Quantity => {
  const plain = straightQuotes(text);
  const inches = feetAndInches(plain, words);
  const readings = inches === undefined ? valuesOf(plain, unit, allowed, words) : [inches];
  if (readings === 'unit needed') return { kind: 'unit needed' };
  const [value, ...others] = readings.filter((reading) => reading >= from && reading <= to);
  return value === undefined || others.length > 0 ? notRead : { kind: 'quantity', value: rounded(value) };
};

const straightQuotes = (text: string): string =>
  plainNumber(
    text
      .trim()
      .replace(/[′’‘]/g, "'")
      .replace(/[″“”]|''/g, '"'),
  );

const valuesOf = (
  plain: string,
  unit: ImportUnit | undefined,
  allowed: readonly ImportUnit[],
  words: ValueWords,
): readonly number[] | 'unit needed' => {
  const split = splitAmount(plain);
  if (split === undefined) return [];
  const readings = numberReadings(split.number);
  const named = split.unit === '' ? unit : unitNamed(split.unit, words);
  if (named === undefined) return split.unit === '' && readings.length > 0 ? 'unit needed' : [];
  return allowed.includes(named) ? readings.map((reading) => reading * sizes[named]) : [];
};

/** `20' 6"`, `20 ft 6 in`, `20 ft 6 1/2 in`; `undefined` for anything else. */
const feetAndInches = (plain: string, words: ValueWords): number | undefined => {
  const first = splitAmount(plain);
  if (first === undefined) return undefined;
  const [unit = '', rest = ''] = splitUnit(first.unit);
  if (rest === '' || unitNamed(unit, words) !== 'ft') return undefined;
  const second = splitAmount(rest);
  if (second === undefined || unitNamed(second.unit, words) !== 'in') return undefined;
  const [feet] = numberReadings(first.number);
  const [inches] = numberReadings(second.number);
  if (feet === undefined || inches === undefined || inches >= 12 || !Number.isInteger(feet)) return undefined;
  return feet * sizes.ft + inches * sizes.in;
};

/** `ft 6 in` into `ft` and `6 in`. */
const splitUnit = (text: string): readonly string[] => {
  const found = /^([^\d]*?)[\s-]*(\d.*)$/.exec(text);
  return found === null ? [text] : [found[1] ?? '', found[2] ?? ''];
};

const splitAmount = (plain: string): { readonly number: string; readonly unit: string } | undefined => {
  const found = amount.exec(plain);
  if (found === null) return undefined;
  return { number: found[1] ?? '', unit: (found[2] ?? '').trim() };
};

/** The unit of that name; `'` and `"` are names too. */
export const unitNamed = (text: string, { units }: ValueWords): ImportUnit | undefined => {
  const name = text.trim().replace(/\.$/, '');
  const plain = plainWords(name);
  return (Object.keys(units) as ImportUnit[]).find((unit) =>
    units[unit].some((word) => word === name || (plain !== '' && plainWords(word) === plain)),
  );
};

/** To the ten-thousandth of a millimetre, or of a gram: what is left over is of the arithmetic. */
const rounded = (value: number): number => Math.round(value * 1e7) / 1e7;

/** Both ends of `59–140 kg`, `130 to 310 lb`, `de 59 a 140 kg`, in kilograms. */
export const readRange = (
  text: string,
  unit: ImportUnit | undefined,
  words: ValueWords,
): { readonly from: Quantity; readonly to: Quantity } => {
  const parts =
    /^(?:de |from )?\s*(\d[^–—\-a-z]*)\s*([a-z]*)\.?\s*(?:–|—|-|\bto\b|\ba\b|\bhasta\b)\s*(\d[^–—\-a-z]*)\s*([a-z]*)\.?$/i.exec(
      text.trim(),
    );
  if (parts === null) return { from: notRead, to: notRead };
  const [, low = '', lowUnit = '', high = '', highUnit = ''] = parts;
  const read = (value: string, own: string): Quantity =>
    readQuantity(`${value.trim()} ${own}`, weightBounds, unit, ['kg', 'lb'], words);
  return { from: read(low, lowUnit === '' ? highUnit : lowUnit), to: read(high, highUnit) };
};
