/** What GS1 elements say of the device that carries them. */
import type { Identification, MarkedDate } from '../../domain/marking-data.ts';
import type { Gs1Element } from './element.ts';
import { readSixDigitDate } from './six-digit-date.ts';

/** Source of the meaning of each AI: GS1 General Specifications, chapter 3. */
export const identifyByGs1 = (elements: readonly Gs1Element[], currentYear: number): Identification => {
  const values = new Map(elements.map(({ ai, value }) => [ai, value]));
  const [, assetType, assetSerial] = /^0(\d{13})(.*)$/.exec(values.get('8003') ?? '') ?? [];
  const dateOf = (ai: string): MarkedDate | undefined => readSixDigitDate(values.get(ai) ?? '', currentYear);
  return present({
    gtin: values.get('01'),
    manufacturerReference: values.get('240') ?? assetType,
    serial: values.get('21') ?? (assetSerial === '' ? undefined : assetSerial),
    individualId: values.get('8004'),
    lot: values.get('10'),
    dateOfManufacture: dateOf('11'),
    expiry: dateOf('17'),
  });
};

/** Without the parts that are absent. */
export const present = (
  parts: {
    readonly [Name in keyof Identification]: Identification[Name] | undefined;
  },
): Identification =>
  Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined)) as Identification;
