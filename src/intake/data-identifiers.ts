/**
 * The data identifiers (DIs) of ANSI MH10.8.2, in which ISO/IEC 15434 format 06 writes its fields: up to three digits and a
 * letter, then the data. Their meanings are from memory of ANSI MH10.8.2, except where said.
 */
import type { Identification, MarkedDate } from '../domain/marking-data.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import { shown } from './control-characters.ts';
import { present } from './gs1/identify.ts';
import { markedDate } from './gs1/six-digit-date.ts';

export interface Field {
  readonly identifier: string;
  readonly value: string;
}

/** What is read of a field; a field with any other DI is stepped over, for every field has its own separator. */
const meanings: Readonly<Record<string, keyof Identification>> = {
  /** Serial number that the supplier gave the thing for its life. */
  S: 'serial',
  /** Supplier's item identification: the part number. */
  '1P': 'manufacturerReference',
  /** Supplier's traceability number: the lot. */
  '1T': 'lot',
  /** Date of production, YYYYMMDD. */
  '16D': 'dateOfManufacture',
  /** Date of expiry, YYYYMMDD. */
  '14D': 'expiry',
  /** Enterprise: GS1 company prefix, DUNS, CAGE, and any issuing agency with its company number. */
  '3V': 'manufacturerId',
  '12V': 'manufacturerId',
  '17V': 'manufacturerId',
  '18V': 'manufacturerId',
  /** Enterprise and serial number in one, unique in the world. */
  '18S': 'individualId',
  '25S': 'individualId',
};

export const readField = (text: string): Field | Refusal => {
  const [, identifier, value = ''] = /^(\d{0,3}[A-Z])(.*)$/s.exec(text) ?? [];
  if (identifier === undefined) return refusal('di-unknown', { text: shown(text, 12) });
  if (value.trim() === '') return refusal('di-empty', { identifier });
  return isDate(identifier) && readDate(value) === undefined
    ? refusal('di-date', { identifier, value: shown(value) })
    : { identifier, value };
};

export const identifyByFields = (fields: readonly Field[]): Identification => {
  const found: { [Name in keyof Identification]: Identification[Name] | undefined } = {};
  for (const { identifier, value } of fields) {
    const name = meanings[identifier];
    if (name === undefined || found[name] !== undefined) continue;
    if (name === 'dateOfManufacture' || name === 'expiry') found[name] = readDate(value);
    else found[name] = value;
  }
  return present(found);
};

const isDate = (identifier: string): boolean => identifier === '16D' || identifier === '14D';

const readDate = (text: string): MarkedDate | undefined => {
  const [, year, month, day] = /^(\d{4})(\d\d)(\d\d)$/.exec(text) ?? [];
  return year === undefined ? undefined : markedDate(Number(year), Number(month), Number(day));
};

/** As `canonicalGs1`, with the DIs in brackets: the form in which such a code is bound to a device. */
export const canonicalFields = (fields: readonly Field[]): string =>
  [...fields]
    .sort((one, other) => (keyOf(one) < keyOf(other) ? -1 : 1))
    .map(({ identifier, value }) => `[${identifier}]${value.replace(/[\\[]/g, '\\$&')}`)
    .join('');

const keyOf = ({ identifier, value }: Field): string => `${identifier}\n${value}`;
