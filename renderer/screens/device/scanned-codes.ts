/** The codes that were scanned off a device while it is registered: what they say, and which of them are kept. */
import type { Identification, MarkingData } from '../../../src/domain/marking-data.ts';
import { isBindable } from '../../scan/bindable.ts';

export interface ScannedCode {
  readonly code: string;
  readonly data?: MarkingData | undefined;
}

export const withCode = (codes: readonly ScannedCode[], scanned: ScannedCode): readonly ScannedCode[] =>
  codes.some(({ code }) => code === scanned.code) ? codes : [...codes, scanned];

/** Codes that can mean this one device. */
export const keptCodes = (codes: readonly ScannedCode[]): readonly ScannedCode[] =>
  codes.filter(({ code, data }) => isBindable(code, data));

/** Codes that say nothing by their form, one of which may be the plain serial number. */
export const plainCodes = (codes: readonly ScannedCode[]): readonly string[] =>
  keptCodes(codes).flatMap(({ code, data }) => (data === undefined ? [code] : []));

export const identificationsOf = (codes: readonly ScannedCode[]): readonly Identification[] =>
  codes.flatMap(({ data }) => (data === undefined ? [] : [data.identification]));
