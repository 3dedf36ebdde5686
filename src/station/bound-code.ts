/** The form in which a code is bound to a device, and what speaks against binding it. */
import type { BenchId } from '../domain/brand.ts';
import { longestCode, type OtherCode, otherCodeSchema, shortestCode } from '../domain/device.ts';
import { isSameSerial, type MarkingData, matchReference } from '../domain/marking-data.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { readScan, type Scan } from '../intake/read-scan.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { badgeMeaning, ownCodeMeaning } from './badge.ts';

export interface BoundCode {
  readonly otherCode: OtherCode;
  /** As it was scanned; a code that was bound before codes had one form stands in the record like that. */
  readonly scanned: string;
  readonly data?: MarkingData | undefined;
}

/**
 * Refuses what is ours, damaged, stands on every device of a model, or is too short or too long without what the scanner says
 * of the symbol. `field` is where the code came in.
 */
export const boundCode = (otherCode: OtherCode, currentYear: number, field: string): BoundCode | Refusal => {
  const bound = boundScan(otherCode, readScan(otherCode.code, currentYear), field);
  if (isRefusal(bound) || otherCodeSchema.safeParse(bound.otherCode).success) return bound;
  return refusal(
    'code-length',
    { code: bound.otherCode.code, least: shortestCode, most: longestCode },
    field,
  );
};

const boundScan = (otherCode: OtherCode, scan: Scan, field: string): BoundCode | Refusal => {
  const scanned = otherCode.code;
  switch (scan.kind) {
    case 'command':
    case 'place':
    case 'tag':
    case 'altered tag':
    case 'bench ID':
      return refusal('code-is-ours', { code: scanned, meaning: ownMeaning(scan.kind) }, field);
    case 'malformed':
      return refusal(scan.fault.code, scan.fault.values, field);
    case 'other':
      return ownCodeMeaning(scan.text) === undefined
        ? { otherCode: { ...otherCode, code: scan.text }, scanned }
        : refusal('code-is-ours', { code: scanned, meaning: ownCodeMeaning(scan.text) ?? '' }, field);
    case 'marking data':
      return scan.data.names === 'its model'
        ? refusal('code-names-model', { code: scan.code }, field)
        : { otherCode: { ...otherCode, code: scan.code }, scanned, data: scan.data };
  }
};

const ownMeaning = (kind: 'command' | 'place' | 'tag' | 'altered tag' | 'bench ID'): string => {
  if (kind === 'command') return 'command symbol';
  if (kind === 'place') return 'bin label';
  return kind === 'altered tag' ? 'tag' : kind;
};

/** Each code once, or the first refusal. */
export const boundCodes = (
  otherCodes: readonly OtherCode[],
  currentYear: number,
  field: string,
): readonly BoundCode[] | Refusal => {
  const found = new Map<string, BoundCode>();
  for (const otherCode of otherCodes) {
    const bound = boundCode(otherCode, currentYear, field);
    if (isRefusal(bound)) return bound;
    found.set(bound.otherCode.code, bound);
  }
  return [...found.values()];
};

/** A code that says another serial number or another model than the device has may have been scanned off another device. */
export const contradiction = (
  { otherCode: { code }, data }: BoundCode,
  serial: string,
  sheet: ModelSheet | undefined,
  field: string,
): Refusal | undefined => {
  if (data === undefined) return undefined;
  const { identification } = data;
  if (matchReference(identification, sheet?.manufacturerReference) === 'other') {
    const { gtin = '' } = identification;
    return refusal(
      'code-model-differs',
      { code, ofCode: gtin, ofSheet: sheet?.manufacturerReference ?? '' },
      field,
    );
  }
  const ofCode = identification.serial;
  return ofCode === undefined || serial === '' || isSameSerial(ofCode, serial)
    ? undefined
    : refusal('code-serial-differs', { code, ofCode, serial }, field);
};

/** What the code means at this station already, in words, in either form. */
export const codeMeaning = async (
  reader: LedgerReader,
  { otherCode, scanned }: BoundCode,
): Promise<string | undefined> =>
  (await badgeMeaning(reader, otherCode.code)) ??
  (scanned === otherCode.code ? undefined : await badgeMeaning(reader, scanned));

/** The devices that hold one of these codes, each once. */
export const holdersOf = async (
  reader: LedgerReader,
  codes: readonly string[],
): Promise<readonly BenchId[]> => {
  const holders = new Set<BenchId>();
  for (const code of new Set(codes.filter((each) => each.length <= longestCode))) {
    const holder = await reader.deviceByCode(code);
    if (holder !== undefined) holders.add(holder);
  }
  return [...holders];
};
