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
  if (pace.leftMs() < weighingMs) return found.reading();
  const field = fieldOf(picture);
  const places = locateBars(field, mostPlaces);
  if (!found.isCertain()) weighPlaces(places, found, weigherOf(field, pace, isRegistered));
  if (!found.isCertain()) await decodeRestored(field, found, pace);
  if (found.isCertain()) lookForOther(field, places, found, weigherOf(field, pace, isRegistered));
  return found.reading();
};

/** A picture with a side below this many dots holds no symbol. */
const leastDots = 24;
const plainDecoders: readonly DecoderName[] = ['zxing-cpp', 'zbar'];
const restoredDecoders: readonly DecoderName[] = ['zxing-cpp', 'zbar', 'jsqr'];

const mostPlaces = 6;

/**
 * What weighing one place takes on a slow core. It is one step, so with less time left it is not begun; and in a frame of a
 * camera, which never has as much, no bars are looked for.
 */
const weighingMs = 600;

type Weigh = (place: BarsPlace) => WeighedPlace | 'unreadable' | 'no time';

const weigherOf = (field: Field, pace: Pace, isRegistered: (benchId: BenchId) => boolean): Weigh => {
  const steps = stepsWithin(pace);
  return (place) => {
    if (!steps.fitsAnother() || pace.leftMs() < weighingMs) return 'no time';
    const weighed = weighPlace(field, place, pace);
    return weighed !== undefined && isFarLikelier(weighed, isRegistered) ? weighed : 'unreadable';
  };
};

/** Places are tried until one of them tells. */
const weighPlaces = (places: readonly BarsPlace[], found: Findings, weigh: Weigh): void => {
  const tried: BarsPlace[] = [];
  for (const place of places) {
    if (tried.filter((other) => isNear(other, place)).length >= triesOfOnePlace) continue;
    tried.push(place);
    const weighed = weigh(place);
    if (weighed === 'no time') return;
    if (weighed === 'unreadable') continue;
    found.addWeighed(weighed);
    return;
  }
};

/**
 * The tag that was read is covered, and what is left of the picture is searched for the bars of a second one: it is there
 * where bars give another bench ID, or where none do and one place is too much like bars to be anything else. Where the bars
 * of the tag that was read are not among the places, none of these is its own.
 */
const lookForOther = (field: Field, places: readonly BarsPlace[], found: Findings, weigh: Weigh): void => {
  const own = places.find((place) => isBarred(place) && found.isOnFoundTag(place));
  const left =
    own === undefined
      ? places.filter((place) => !found.isOnFoundTag(place))
      : locateBars(withoutTag(field, own), mostPlaces);
  const clearest = own ?? places[0];
  if (clearest === undefined) return;
  for (const place of left.filter((each) => mayBeBars(each, clearest)).slice(0, mostOthers)) {
    const weighed = weigh(place);
    if (typeof weighed === 'object') found.addWeighed(weighed);
    if (found.hasSeveral()) return;
  }
  if ((own !== undefined || found.hasBars()) && left.some((place) => looksLikeBars(place, clearest)))
    found.addUnreadable();
};

const mostOthers = 3;

const triesOfOnePlace = 2;

const isNear = (a: BarsPlace, b: BarsPlace): boolean => Math.hypot(a.x - b.x, a.y - b.y) < 0.3 * a.length;

/**
 * QR Code and Code 128 of a tag lie in one row, at most 1.3 lengths of the bars apart, or one over the other within half a
 * length; two tags are farther off.
 */
const isOnTagOf = (bars: BarsPlace, x: number, y: number): boolean => {
  const [cosine, sine] = [Math.cos(bars.angle), Math.sin(bars.angle)];
  const [awayX, awayY] = [x - bars.x, y - bars.y];
  const across = Math.abs(awayX * cosine + awayY * sine);
  const along = Math.abs(awayY * cosine - awayX * sine);
  return across < 1.3 * bars.length && along < 0.55 * bars.length;
};

/** With one even grey over the tag that has these bars. */
const withoutTag = (field: Field, bars: BarsPlace): Field => {
  const values = field.values.slice();
  const grey = values.reduce((sum, value) => sum + value, 0) / values.length;
  for (let y = 0; y < field.height; y += 1)
    for (let x = 0; x < field.width; x += 1) if (isOnTagOf(bars, x, y)) values[y * field.width + x] = grey;
  return { ...field, values };
};

/** Bars are far longer than high; rows of print are not. */
const isBarred = ({ length, height }: BarsPlace): boolean => length > 3 * height;

/** Worth weighing: of all that is left of a picture of one tag, print and drawings alone are like this. */
const mayBeBars = (place: BarsPlace, clearest: BarsPlace): boolean =>
  place.score > 0.05 * clearest.score &&
  place.length > 2 * place.height &&
  place.length > 0.25 * clearest.length;

/**
 * Whether what cannot be read is the bars of another tag all the same, or its print seen from the side. Beside a status tag
 * nothing as long was left in 122 pictures of one at A to C; the widest line of print of a quarantine tag had up to 0.27 of
 * the score of its bars; of 174 second tags at A to C the least clear one had 0.31.
 */
const looksLikeBars = (place: BarsPlace, clearest: BarsPlace): boolean =>
  place.score > 0.28 * clearest.score &&
  place.length > 2 * place.height &&
  place.length > 0.5 * clearest.length;

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
  #hasUnreadable = false;

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

  /** There is another tag, and it cannot be read. */
  addUnreadable(): void {
    this.#hasUnreadable = true;
  }

  /** Whether the bars belong to a tag of which a symbol was read. */
  isOnFoundTag(bars: BarsPlace): boolean {
    return this.#symbols.some(({ x, y }) => isOnTagOf(bars, x, y));
  }

  isCertain(): boolean {
    return this.#evidence.size > 0;
  }

  hasSeveral(): boolean {
    return this.#evidence.size > 1;
  }

  /** Whether a tag was read that carries bars; an ID label carries a Data Matrix alone. */
  hasBars(): boolean {
    return [...this.#evidence.values()].flat().some(({ source }) => source !== 'Data Matrix');
  }

  reading(): WornReading {
    const [first, ...others] = this.#evidence;
    if (first === undefined) return { kind: 'none' };
    if (others.length > 0 || this.#hasUnreadable)
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
