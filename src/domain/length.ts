/** Lengths: stored in metres, shown and typed in feet or metres. */
import { z } from 'zod';
import { type Metres, type Millimetres, metres, millimetres } from './brand.ts';
import type { Language } from './message.ts';

export const lengthUnitSchema = z.enum(['m', 'ft']);
export type LengthUnit = z.infer<typeof lengthUnitSchema>;

/** Exact by definition: 1 ft = 0.3048 m (NIST Special Publication 811, appendix B.8). */
export const metresPerFoot = 0.3048;

export const fromUnit = (value: number, unit: LengthUnit): Metres =>
  metres(unit === 'm' ? value : value * metresPerFoot);
export const toUnit = (lengthM: number, unit: LengthUnit): number =>
  unit === 'm' ? lengthM : lengthM / metresPerFoot;

/** `15.24 m`, `50 ft`; to the millimetre or the hundredth of a foot, with the decimal mark of the language. */
export const lengthText = (lengthM: number, unit: LengthUnit, language: Language): string => {
  const scale = unit === 'm' ? 1000 : 100;
  const rounded = String(Math.round(toUnit(lengthM, unit) * scale) / scale);
  return `${language === 'es' ? rounded.replace('.', ',') : rounded} ${unit}`;
};

/** Exact by definition: 1 in = 25.4 mm (NIST Special Publication 811, appendix B.8). */
const millimetresPerInch = 25.4;

export type DiameterUnit = 'mm' | 'in';

/** What a calliper says where lengths are in this unit. */
export const diameterUnitOf = (unit: LengthUnit): DiameterUnit => (unit === 'm' ? 'mm' : 'in');

/** In that unit. */
export const diameterIn = (diameterMm: number, unit: DiameterUnit): number =>
  unit === 'mm' ? diameterMm : diameterMm / millimetresPerInch;

/**
 * `4.8 mm` or `0.1875 in`; to the hundredth or the ten-thousandth, so that two diameters that differ by as much as decides are
 * told apart in either. With the decimal mark of the language.
 */
export const diameterText = (diameterMm: number, unit: LengthUnit, language: Language): string => {
  const shown = diameterUnitOf(unit);
  const scale = shown === 'mm' ? 100 : 10_000;
  const rounded = String(Math.round(diameterIn(diameterMm, shown) * scale) / scale);
  return `${language === 'es' ? rounded.replace('.', ',') : rounded} ${shown}`;
};

/** A diameter as a person typed it, in `unit` where it names none (`mm`, `in` or `"`); `undefined` where it is no diameter. */
export const parseDiameter = (text: string, unit: DiameterUnit): Millimetres | undefined => {
  const [, number = '', named = unit] = /^(\d{0,3}(?:[.,]\d{1,4})?)\s*(mm|in|")?$/.exec(text.trim()) ?? [];
  if (number === '') return undefined;
  const value = Number(number.replace(',', '.'));
  return millimetres(named === 'mm' ? value : value * millimetresPerInch);
};

/** The length that a person typed, comma or point as decimal mark; `undefined` where it is not a number. */
export const parseLength = (text: string, unit: LengthUnit): Metres | undefined => {
  const trimmed = text.trim().replace(',', '.');
  return /^\d{1,3}(\.\d{1,4})?$/.test(trimmed) ? fromUnit(Number(trimmed), unit) : undefined;
};
