/** What the page and the worker that reads pictures tell one another. */
import type { BenchId } from '../../src/domain/brand.ts';
import type { SightReading } from '../../src/tags/read/read-sight.ts';

export type { SightReading } from '../../src/tags/read/read-sight.ts';
export type { Evidence } from '../../src/tags/read/worn-reading.ts';

/** How closely a picture is looked at. */
export interface Look {
  readonly budgetMs: number;
  /** The picture is made smaller until no side has more dots. */
  readonly mostDots: number;
  /** Only for the symbols of our own tags, in less time. */
  readonly oursOnly: boolean;
}

export type ToReader =
  /** The bench IDs of the register; those told before stay. */
  | { readonly kind: 'register'; readonly benchIds: readonly BenchId[] }
  /** A frame of the camera, or the bytes of a picture file. Answered before another is sent. */
  | { readonly kind: 'read'; readonly picture: ImageBitmap | Blob; readonly look: Look };

export type FromReader =
  /** How much of the budget is used, 0 to 1. */
  | { readonly kind: 'progress'; readonly used: number }
  | {
      readonly kind: 'read';
      readonly reading: SightReading;
      /** The whole picture as JPEG, where something was read in it. */
      readonly still?: Blob;
    }
  /** The bytes are no picture that the browser can read. */
  | { readonly kind: 'no picture' }
  /** The decoders could not be started. */
  | { readonly kind: 'failed' };

/** What a reading of one picture comes to. */
export type ReaderAnswer = Exclude<FromReader, { kind: 'progress' }>;
