/** Tells a maker's own data from any other text, and reads it: GS1 element strings, ISO/IEC 15434 messages, and GTINs. */
import { gs1CheckDigit, gtin14, hasGs1CheckDigit, type MarkingData } from '../domain/marking-data.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { GS, shown } from './control-characters.ts';
import { leadingAi, predefinedLengthOf } from './gs1/application-identifiers.ts';
import { looksBracketed, readBracketed } from './gs1/bracketed.ts';
import { canonicalGs1, type Gs1Element } from './gs1/element.ts';
import { readElementString, separatorsMayBeLost } from './gs1/element-string.ts';
import { identifyByGs1 } from './gs1/identify.ts';
import { announcesGs1, announcesGtin } from './symbology-identifier.ts';
import { looksLikeTransferMessage, readTransferMessage } from './transfer-message.ts';

export type ReadMarking =
  | { readonly kind: 'marking data'; readonly code: string; readonly data: MarkingData }
  | { readonly kind: 'malformed'; readonly fault: Refusal };

/** `undefined` where the text did not set out to be such data. */
export const readMarkingData = (
  symbologyId: string | undefined,
  text: string,
  currentYear: number,
): ReadMarking | undefined => {
  if (looksLikeTransferMessage(text)) {
    const message = readTransferMessage(text, currentYear);
    if (isRefusal(message)) return malformed(message);
    return markingData(message.canonical, message.source, message.identification, false);
  }
  if (announcesGtin(symbologyId)) return readGtin(text);
  if (looksBracketed(text)) return ofElements(readBracketed(text, currentYear), currentYear, () => false);
  if (!announcesGs1(symbologyId) && !setsOutAsGs1(text)) return undefined;
  return ofElements(readElementString(text, currentYear), currentYear, (elements) =>
    separatorsMayBeLost(text, elements, currentYear),
  );
};

/**
 * Without a symbology identifier a text counts as GS1 where a group separator stands in it after an AI, or where it begins
 * with AI 01 and a GTIN with its right check digit and goes on, if it does, with an AI. Anything less is a maker's serial.
 */
const setsOutAsGs1 = (text: string): boolean => {
  const start = text.startsWith(GS) ? text.slice(1) : text;
  const beginsWithAi = leadingAi(start) !== undefined || predefinedLengthOf(start) !== undefined;
  if (text.includes(GS)) return beginsWithAi;
  const [, gtin, rest = ''] = /^01(\d{14})(.*)$/s.exec(text) ?? [];
  if (gtin === undefined || !hasGs1CheckDigit(gtin)) return false;
  return rest === '' || leadingAi(rest) !== undefined || predefinedLengthOf(rest) !== undefined;
};

const ofElements = (
  elements: readonly Gs1Element[] | Refusal,
  currentYear: number,
  isDoubtful: (elements: readonly Gs1Element[]) => boolean,
): ReadMarking =>
  isRefusal(elements)
    ? malformed(elements)
    : markingData(
        canonicalGs1(elements),
        'GS1 element string',
        identifyByGs1(elements, currentYear),
        isDoubtful(elements),
      );

/** EAN-13 and UPC as 13 digits, EAN-8 as 8, which the scanner checked already (GS1 General Specifications, figure 5.1.2-1). */
const readGtin = (text: string): ReadMarking => {
  const gtin = gtin14(text);
  if (gtin !== undefined) return markingData(`(01)${gtin}`, 'EAN/UPC', { gtin }, false);
  const should = /^(\d{8}|\d{12,14})$/.test(text) ? gs1CheckDigit(text.slice(0, -1)) : undefined;
  return malformed(
    should === undefined
      ? refusal('gtin-shape', { text: shown(text) })
      : refusal('gs1-check-digit', { ai: '01', value: text, is: text.slice(-1), should }),
  );
};

const malformed = (fault: Refusal): ReadMarking => ({ kind: 'malformed', fault });

const markingData = (
  code: string,
  source: MarkingData['source'],
  identification: MarkingData['identification'],
  isDoubtful: boolean,
): ReadMarking => ({
  kind: 'marking data',
  code,
  data: { source, identification, names: namedBy(identification), separatorsMayBeLost: isDoubtful },
});

const namedBy = ({
  serial,
  individualId,
  gtin,
  manufacturerReference,
  lot,
  dateOfManufacture,
  expiry,
}: MarkingData['identification']): MarkingData['names'] => {
  if (serial !== undefined || individualId !== undefined) return 'one device';
  const ofModel = [gtin, manufacturerReference, lot, dateOfManufacture, expiry];
  return ofModel.some((part) => part !== undefined) ? 'its model' : 'something else';
};
