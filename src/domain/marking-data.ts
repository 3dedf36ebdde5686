/** What a maker's own symbol says of the device that carries it, and how that is held against what a person read off it. */
import { z } from 'zod';
import { calendarDateSchema } from './brand.ts';

/** A date of the marking. Where the maker gave only year and month, `on` is the last day of the month. */
export const markedDateSchema = z.object({ on: calendarDateSchema, dayGiven: z.boolean() });
export type MarkedDate = z.infer<typeof markedDateSchema>;

export const markingSources = [
  'GS1 element string',
  'ISO/IEC 15434 format 05',
  'ISO/IEC 15434 format 06',
  'EAN/UPC',
] as const;

export const identificationSchema = z.object({
  /** The maker's own number of the model: a part number, or the asset type of a GRAI. */
  manufacturerReference: z.string().optional(),
  /** The Global Trade Item Number of the model, in 14 digits. */
  gtin: z.string().optional(),
  /** Who the maker is, by the number of a registration authority. */
  manufacturerId: z.string().optional(),
  serial: z.string().optional(),
  /** An identifier that no other thing in the world has, such as a GIAI. */
  individualId: z.string().optional(),
  lot: z.string().optional(),
  dateOfManufacture: markedDateSchema.optional(),
  expiry: markedDateSchema.optional(),
});
export type Identification = z.infer<typeof identificationSchema>;

export const markingDataSchema = z.object({
  source: z.enum(markingSources),
  identification: identificationSchema,
  /** A code that names only the model stands on every device of it, and so never means one of them. */
  names: z.enum(['one device', 'its model', 'something else']),
  /** The end of an element looks like another one: the scanner may drop the separators. */
  separatorsMayBeLost: z.boolean(),
});
export type MarkingData = z.infer<typeof markingDataSchema>;

/** The date as a person would write it off the device: `2026-01`, or `2026-01-31` where the day is given. */
export const markedDateText = ({ on, dayGiven }: MarkedDate): string => (dayGiven ? on : on.slice(0, 7));

/** GS1 General Specifications §7.9.1: weights 3 and 1 from the right, beginning with 3 beside the check digit. */
export const gs1CheckDigit = (digits: string): number => {
  let sum = 0;
  for (let place = 1; place <= digits.length; place += 1) {
    sum += Number(digits.charAt(digits.length - place)) * (place % 2 === 1 ? 3 : 1);
  }
  return (10 - (sum % 10)) % 10;
};

export const hasGs1CheckDigit = (digits: string): boolean =>
  Number(digits.at(-1)) === gs1CheckDigit(digits.slice(0, -1));

/** A GTIN-8, -12, -13 or -14 in 14 digits; `undefined` where the text is none. Spaces and hyphens do not matter. */
export const gtin14 = (text: string): string | undefined => {
  const digits = text.replace(/[\s-]/g, '');
  return /^(\d{8}|\d{12,14})$/.test(digits) && hasGs1CheckDigit(digits)
    ? digits.padStart(14, '0')
    : undefined;
};

/**
 * Whether a code speaks of the model with this reference of its model sheet (a GTIN or a part number). `other` only where
 * both are GTINs: a part number and a GTIN cannot be held against one another.
 */
export const matchReference = (
  { gtin, manufacturerReference }: Identification,
  ofSheet: string | undefined,
): 'same' | 'other' | 'not comparable' => {
  if (ofSheet === undefined) return 'not comparable';
  const sheetGtin = gtin14(ofSheet);
  if (sheetGtin !== undefined && gtin !== undefined) return sheetGtin === gtin ? 'same' : 'other';
  return manufacturerReference !== undefined && plainKey(manufacturerReference) === plainKey(ofSheet)
    ? 'same'
    : 'not comparable';
};

/** Whether two writings of a serial number agree: letter case, leading zeros and marks other than letters and digits aside. */
export const isSameSerial = (one: string, other: string): boolean =>
  plainKey(one).replace(/^0+/, '') === plainKey(other).replace(/^0+/, '');

const plainKey = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
