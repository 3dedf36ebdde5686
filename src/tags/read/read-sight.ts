/** What a picture shows, for whoever acts on it: one code as a scanner delivers it, a worn tag to be confirmed, several, or nothing. */
import { type ReadInputBarcodeFormat, readBarcodes } from 'zxing-wasm/reader';
import { parseBenchId } from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';
import { readTagText } from '../../domain/tag-text.ts';
import type { Picture } from './picture.ts';
import { readWornTag, type WornTagOptions } from './read-worn-tag.ts';
import { type Evidence, isPlain, type WornReading } from './worn-reading.ts';

export type SightReading =
  /** Whole and undamaged: the text as a scanner sends it. */
  | {
      readonly kind: 'code';
      readonly text: string;
      /** False where the symbology lets a wrong text through now and then, so that a second picture must agree. */
      readonly isSure: boolean;
    }
  /** Weighed and not read, or read in a restored version of the picture: a person compares it with the tag. */
  | { readonly kind: 'worn tag'; readonly benchId: BenchId; readonly evidence: readonly Evidence[] }
  | { readonly kind: 'several' }
  | { readonly kind: 'none' };

export interface SightOptions extends WornTagOptions {
  /** Looks for our own symbols alone, in less time. */
  readonly oursOnly?: boolean;
}

/**
 * `prepareDecoders` must have been called. The budget is that of the worn tag; the look at whole codes comes before it. A tag
 * that is read whole still counts for nothing where another one, however worn, lies beside it.
 */
export const readSight = async (
  picture: Picture,
  { oursOnly = false, ...options }: SightOptions = {},
): Promise<SightReading> => {
  const codes = oursOnly ? [] : await wholeCodes(picture);
  const whole = readingOf(codes);
  const isOurs = codes.some(({ benchId }) => benchId !== undefined);
  if (whole !== undefined && (whole.kind === 'several' || !isOurs)) return whole;
  const worn = readingOfWorn(await readWornTag(picture, options));
  return worn.kind === 'several' ? worn : (whole ?? worn);
};

interface WholeCode {
  readonly text: string;
  readonly benchId: BenchId | undefined;
  readonly isTag: boolean;
  readonly isSure: boolean;
}

/** Our own tag goes before any other code beside it. Different tags, or different codes, are never chosen between. */
const readingOf = (codes: readonly WholeCode[]): SightReading | undefined => {
  const ours = codes.filter(({ benchId }) => benchId !== undefined);
  const meant = ours.length > 0 ? ours : codes;
  const [first] = meant;
  if (first === undefined) return undefined;
  const names = new Set(meant.map(({ benchId, text }) => benchId ?? text.replace(identifierPattern, '')));
  if (names.size > 1) return { kind: 'several' };
  const { text, isSure } = meant.find(({ isTag }) => isTag) ?? first;
  return { kind: 'code', text, isSure };
};

const readingOfWorn = (reading: WornReading): SightReading => {
  switch (reading.kind) {
    case 'none':
      return reading;
    case 'several tags':
      return { kind: 'several' };
    case 'read': {
      const { benchId, evidence } = reading;
      if (!isPlain(evidence)) return { kind: 'worn tag', benchId, evidence };
      const texts = evidence.flatMap((each) =>
        each.kind === 'decoded' && each.restoration === undefined ? [each.text] : [],
      );
      const text = texts.find((each) => readTagText(each) !== undefined) ?? texts[0] ?? benchId;
      return { kind: 'code', text, isSure: true };
    }
  }
};

/** Symbologies on tags, badges, command sheets and makers' labels; those with error correction let no wrong text through. */
const symbologies: Readonly<Record<string, 'corrected' | 'checked'>> = {
  Code128: 'checked',
  QRCode: 'corrected',
  DataMatrix: 'corrected',
  Code39: 'checked',
  Code93: 'checked',
  EAN13: 'checked',
  EAN8: 'checked',
  UPCA: 'checked',
  PDF417: 'corrected',
  Aztec: 'corrected',
};
const formats = Object.keys(symbologies) as ReadInputBarcodeFormat[];

/** Symbology identifiers (ISO/IEC 15424) of a GS1 element string; a text without one is read as it stands. */
const identifierPattern = /^\](?:C1|d2|Q3|e0)/;

const wholeCodes = async ({ width, height, luminance }: Picture): Promise<readonly WholeCode[]> => {
  const data = new Uint8ClampedArray(4 * luminance.length);
  const dots = new Uint32Array(data.buffer);
  for (let at = 0; at < luminance.length; at += 1) dots[at] = (luminance[at] ?? 0) * 0x010101 + 0xff000000;
  const results = await readBarcodes(
    { data, width, height, colorSpace: 'srgb' },
    { formats, textMode: 'Plain', maxNumberOfSymbols: 0 },
  );
  return results.flatMap(({ isValid, format, text, symbologyIdentifier }) => {
    if (!isValid || text === '') return [];
    const tag = readTagText(text);
    const parsed = parseBenchId(tag?.benchId ?? text);
    const benchId = parsed.kind === 'exact' ? parsed.id : undefined;
    return {
      text: identifierPattern.test(symbologyIdentifier) ? `${symbologyIdentifier}${text}` : text,
      benchId,
      isTag: tag !== undefined,
      isSure: benchId !== undefined || symbologies[format] === 'corrected',
    };
  });
};
