/** One picture in, at most one bench ID out, never a wrong one: the tag may be faded, rubbed, scratched, soiled, bent and blurred. */

import { parseBenchId } from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';
import { readTagText } from '../../domain/tag-text.ts';
import { type BarsPlace, locateBars } from './bars/locate-bars.ts';
import { type Field, fieldOf } from './field.ts';
import { type DecodedSymbol, type DecoderName, decodeWith } from './general-decoders.ts';
import { type Pace, paceOf, stepsWithin } from './pace.ts';
import type { Picture } from './picture.ts';
import { type Restoration, restoredPictures } from './restored-pictures.ts';
import { type WeighedPlace, weighPlace } from './weigh-place.ts';
import type { Evidence, WornReading } from './worn-reading.ts';

export interface WornTagOptions {
  /** Says of a bench ID whether a device is registered under it; makes a weaker reading of such a one enough. */
  readonly isRegistered?: (benchId: BenchId) => boolean;
  /** 5,000 where it is absent, for a still picture; 200 for a frame of a camera. */
  readonly budgetMs?: number;
  /** Milliseconds from any moment on. */
  readonly now?: () => number;
  /** Asked between steps. */
  readonly isCancelled?: () => boolean;
}

const stillBudgetMs = 5000;

/**
 * The cheapest means first, and no further once the answer is certain or the time is used up. `prepareDecoders` must have
 * been called.
 *
 * A whole symbol that a general decoder reads counts where its bench ID is an exact codeword. Where none is read, bars and
 * printed characters are weighed character by character and the likeliest codeword counts where it is far likelier than any
 * other. Different bench IDs in one picture are never chosen between.
 */
export const readWornTag = async (picture: Picture, options: WornTagOptions = {}): Promise<WornReading> => {
  const pace = paceOf({
    budgetMs: options.budgetMs ?? stillBudgetMs,
    now: options.now ?? (() => performance.now()),
    isCancelled: options.isCancelled ?? (() => false),
  });
  const isRegistered = options.isRegistered ?? (() => false);
  const found = new Findings();
  if (picture.width < leastDots || picture.height < leastDots) return { kind: 'none' };

  for (const decoder of plainDecoders) {
    if (pace.isOver()) break;
    found.addDecoded(await decodeWith(decoder, picture), 1);
    if (found.isCertain()) break;
  }
  if (pace.isOver()) return found.reading();

  const field = fieldOf(picture);
  weighPlaces(field, found, pace, isRegistered);
  if (!found.isCertain()) await decodeRestored(field, found, pace);
  return found.reading();
};

/** A picture with a side below this many dots holds no symbol. */
const leastDots = 24;
const plainDecoders: readonly DecoderName[] = ['zxing-cpp', 'zbar'];
const restoredDecoders: readonly DecoderName[] = ['zxing-cpp', 'zbar', 'jsqr'];

const mostPlaces = 6;

/** What weighing one place takes on a slow core. It is one step, so with less time left, as for a frame of a camera, it is not begun. */
const weighingMs = 600;

/**
 * Places of one tag are tried until one of them tells; then only places that lie apart from it, for a second tag. Where
 * there is one that looks like the bars of another tag but cannot be read, the answer is still that there are several.
 */
const weighPlaces = (
  field: Field,
  found: Findings,
  pace: Pace,
  isRegistered: (benchId: BenchId) => boolean,
): void => {
  if (pace.leftMs() < weighingMs) return;
  const places = locateBars(field, mostPlaces);
  const steps = stepsWithin(pace);
  const tried: BarsPlace[] = [];
  for (const place of places) {
    if (!steps.fitsAnother() || pace.leftMs() < weighingMs) return;
    const second = found.isCertain();
    if (second && (!looksLikeBars(place, places) || found.isOnFoundTag(place))) continue;
    if (!second && tried.filter((other) => isNear(other, place)).length >= triesOfOnePlace) continue;
    tried.push(place);
    const weighed = weighPlace(field, place, pace);
    if (weighed !== undefined && isFarLikelier(weighed, isRegistered)) found.addWeighed(weighed);
    else if (second) found.addUnreadable(place);
  }
};

const triesOfOnePlace = 2;

const isNear = (a: BarsPlace, b: BarsPlace): boolean => Math.hypot(a.x - b.x, a.y - b.y) < 0.3 * a.length;

/** Long as bars are, and not far less clear than the clearest: what else is on a tag or about it is neither. */
const looksLikeBars = (place: BarsPlace, places: readonly BarsPlace[]): boolean => {
  const clearest = places[0] ?? place;
  return (
    place.score > 0.3 * clearest.score &&
    place.length > 3 * place.height &&
    place.length > 0.5 * clearest.length
  );
};

const decodeRestored = async (field: Field, found: Findings, pace: Pace): Promise<void> => {
  const steps = stepsWithin(pace);
  for (const { name, picture, scale } of restoredPictures(field))
    for (const decoder of restoredDecoders) {
      if (!steps.fitsAnother()) return;
      found.addDecoded(await decodeWith(decoder, picture), scale, name);
      if (found.isCertain()) return;
    }
};

/**
 * How much likelier than any other a bench ID must be, in log likelihood, and how much likelier than what the characters by
 * themselves would have cost (a codeword that many characters contradict is a guess). Of 159 places of pictures far more
 * worn than level C, and of pictures without a tag, the likeliest of the wrong bench IDs had a margin of 47, and the right
 * ones 120 in the middle.
 */
const leastMargin = 85;
const leastOverLoss = 1.3;

/**
 * Where it is registered less is enough: of all bench IDs 2,000 registered ones are 1 in 500,000, so that a wrong one is
 * hardly ever registered. A registered one is never put in the place of a likelier one that is not.
 */
const leastMarginRegistered = 40;
const leastOverLossRegistered = 0.5;

const isFarLikelier = (
  { benchId, margin, loss }: WeighedPlace,
  isRegistered: (benchId: BenchId) => boolean,
): boolean => {
  if (margin < leastMarginRegistered || margin < leastOverLossRegistered * loss) return false;
  return (margin >= leastMargin && margin >= leastOverLoss * loss) || isRegistered(benchId);
};

class Findings {
  readonly #evidence = new Map<BenchId, Evidence[]>();
  readonly #symbols: { readonly x: number; readonly y: number }[] = [];
  #unreadable = 0;

  addDecoded(symbols: readonly DecodedSymbol[], scale: number, restoration?: Restoration): void {
    for (const { decoder, symbology: source, text, x, y } of symbols) {
      const benchId = benchIdIn(text);
      if (benchId === undefined) continue;
      this.#symbols.push({ x: x * scale, y: y * scale });
      const known = { kind: 'decoded', source, decoder, text } as const;
      this.#add(benchId, restoration === undefined ? known : { ...known, restoration });
    }
  }

  addWeighed({ benchId, evidence, place }: WeighedPlace): void {
    this.#symbols.push(place);
    for (const each of evidence) this.#add(benchId, each);
  }

  /** Bars that cannot be read, on another tag than the one that was. */
  addUnreadable(place: BarsPlace): void {
    if (!this.isOnFoundTag(place)) this.#unreadable += 1;
  }

  /**
   * Whether the bars belong to a tag of which a symbol was read: QR Code and Code 128 of a tag lie in one row, at most 1.3
   * lengths of the bars apart, or one over the other within half a length; two tags are farther off.
   */
  isOnFoundTag({ x, y, angle, length }: BarsPlace): boolean {
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    return this.#symbols.some((symbol) => {
      const [awayX, awayY] = [symbol.x - x, symbol.y - y];
      const across = Math.abs(awayX * cosine + awayY * sine);
      const along = Math.abs(awayY * cosine - awayX * sine);
      return across < 1.3 * length && along < 0.55 * length;
    });
  }

  isCertain(): boolean {
    return this.#evidence.size > 0;
  }

  reading(): WornReading {
    const [first, ...others] = this.#evidence;
    if (first === undefined) return { kind: 'none' };
    if (others.length > 0 || this.#unreadable > 0)
      return { kind: 'several tags', benchIds: [...this.#evidence.keys()] };
    const [benchId, evidence] = first;
    return { kind: 'read', benchId, evidence };
  }

  #add(benchId: BenchId, evidence: Evidence): void {
    const known = this.#evidence.get(benchId);
    if (known === undefined) this.#evidence.set(benchId, [evidence]);
    else known.push(evidence);
  }
}

/** The exact bench ID that a symbol's text is, or carries as the text of a tag. */
const benchIdIn = (text: string): BenchId | undefined => {
  const parsed = parseBenchId(readTagText(text)?.benchId ?? text);
  return parsed.kind === 'exact' ? parsed.id : undefined;
};

export { type Evidence, isPlain, type WornReading } from './worn-reading.ts';
