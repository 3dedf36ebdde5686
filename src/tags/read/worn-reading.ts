/** What a reading of a picture comes to, and on what it rests: data for a screen, never prose. */
import type { BenchId } from '../../domain/brand.ts';
import type { Symbology } from '../../typesetting/symbol.ts';
import type { DecoderName } from './general-decoders.ts';
import type { Restoration } from './restored-pictures.ts';

export type Evidence =
  /** A general decoder read a whole symbol, in the picture as it is or in a restored version of it. */
  | {
      readonly kind: 'decoded';
      readonly source: Symbology;
      readonly decoder: DecoderName;
      readonly text: string;
      readonly restoration?: Restoration;
    }
  /** The bars were weighed symbol by symbol. */
  | {
      readonly kind: 'weighed';
      readonly source: 'Code 128';
      /** Bands along the bars that carry them, of how many. */
      readonly bands: number;
      readonly ofBands: number;
      /** Characters of the bench ID that are also the likeliest each by itself, of ten. */
      readonly characters: number;
      /** How much likelier the bench ID is than any other by this source alone, in units of log likelihood; may be below 0. */
      readonly margin: number;
    }
  /** The printed characters were weighed one by one. */
  | {
      readonly kind: 'weighed';
      readonly source: 'printed characters';
      readonly characters: number;
      readonly margin: number;
    };

export type WornReading =
  | {
      readonly kind: 'read';
      readonly benchId: BenchId;
      readonly evidence: readonly Evidence[];
    }
  /** The bench IDs that could be read; just one where there is another tag that could not. */
  | { readonly kind: 'several tags'; readonly benchIds: readonly BenchId[] }
  | { readonly kind: 'none' };

/**
 * Whether a general decoder read a whole symbol in the picture as it is. Anything else is restored: a suggestion that a
 * person compares with the tag before it counts.
 */
export const isPlain = (evidence: readonly Evidence[]): boolean =>
  evidence.some((each) => each.kind === 'decoded' && each.restoration === undefined);
