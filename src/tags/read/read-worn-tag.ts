/** One picture in, at most one bench ID out, never a wrong one: the tag may be faded, rubbed, scratched, soiled, bent and blurred. */

import { parseBenchId } from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';
import { readTagText } from '../../domain/tag-text.ts';
import { type BarsPlace, locateBars } from './bars/locate-bars.ts';
import { type Field, fieldOf } from './field.ts';
import { type DecodedSymbol, type DecoderName, decodeWith } from './general-decoders.ts';
import { type Pace, paceOf } from './pace.ts';
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

const mostPlaces = 3;

const weighPlaces = (
  field: Field,
  found: Findings,
  pace: Pace,
  isRegistered: (benchId: BenchId) => boolean,
): void => {
  for (const place of locateBars(field, mostPlaces)) {
    if (pace.isOver() || found.isCertain()) return;
    const weighed = weighPlace(field, place, pace);
    if (weighed !== undefined && isFarLikelier(weighed, isRegistered)) found.addWeighed(weighed);
  }
};

const decodeRestored = async (field: Field, found: Findings, pace: Pace): Promise<void> => {
  for (const { name, picture, scale } of restoredPictures(field))
    for (const decoder of restoredDecoders) {
      if (pace.isOver()) return;
      found.addDecoded(await decodeWith(decoder, picture), scale, name);
      if (found.isCertain()) return;
    }
};

/** How much likelier than any other a bench ID must be, in log likelihood, and how much less where it is registered. */
export const leastMargin = 45;
export const leastMarginRegistered = 30;

const isFarLikelier = (
  { benchId, margin, loss }: WeighedPlace,
  isRegistered: (benchId: BenchId) => boolean,
): boolean => margin >= (isRegistered(benchId) ? leastMarginRegistered : leastMargin) && margin > loss;

class Findings {
  readonly #evidence = new Map<BenchId, Evidence[]>();
  #plain = false;

  addDecoded(symbols: readonly DecodedSymbol[], _scale: number, restoration?: Restoration): void {
    for (const { decoder, symbology: source, text } of symbols) {
      const benchId = benchIdIn(text);
      if (benchId === undefined) continue;
      if (restoration === undefined) this.#plain = true;
      const known = { kind: 'decoded', source, decoder, text } as const;
      this.#add(benchId, restoration === undefined ? known : { ...known, restoration });
    }
  }

  addWeighed({ benchId, evidence }: WeighedPlace): void {
    for (const each of evidence) this.#add(benchId, each);
  }

  isCertain(): boolean {
    return this.#evidence.size > 0;
  }

  reading(): WornReading {
    const [first, ...others] = this.#evidence;
    if (first === undefined) return { kind: 'none' };
    if (others.length > 0) return { kind: 'several tags', benchIds: [...this.#evidence.keys()] };
    const [benchId, evidence] = first;
    return { kind: 'read', benchId, manner: this.#plain ? 'plain' : 'restored', evidence };
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

export type { BarsPlace };
