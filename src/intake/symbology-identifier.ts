/**
 * The symbology identifier that a scanner may put before the data (ISO/IEC 15424): `]`, a letter for the symbology, and a
 * modifier. The letters and the meaning of the modifiers are from memory of ISO/IEC 15424 and of the table of symbology
 * identifiers in the GS1 General Specifications.
 */

export interface IdentifiedText {
  /** Such as `]C1`; absent where the scanner sent none. */
  readonly symbologyId?: string | undefined;
  readonly text: string;
}

/** `]X` is *other*, `]Y` a system expansion, `]Z` no barcode at all (a magnetic stripe, a keyboard). */
const pattern = /^\](?:[ABCDEFGHIJKLMNOPQRSTUVXYZdepz][0-9A-Za-z])/;

export const takeOffSymbologyId = (text: string): IdentifiedText => {
  const [symbologyId] = pattern.exec(text) ?? [];
  return symbologyId === undefined ? { text } : { symbologyId, text: text.slice(symbologyId.length) };
};

/** GS1-128, GS1 DataBar, GS1 DataMatrix, GS1 QR Code, GS1 DotCode: what follows is a GS1 element string. */
const gs1Ids = new Set([']C1', ']e0', ']d2', ']Q3', ']J1']);
export const announcesGs1 = (symbologyId: string | undefined): boolean =>
  symbologyId !== undefined && gs1Ids.has(symbologyId);

/** EAN-13, UPC-A and UPC-E as 13 digits, EAN-8 as 8: a GTIN and nothing else. */
export const announcesGtin = (symbologyId: string | undefined): boolean =>
  symbologyId === ']E0' || symbologyId === ']E4';
