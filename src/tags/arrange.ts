/** The choice among the arrangements of a tag: the one that suits the shape of the stock, and what is left out on small stock. */
import type { DotDensity, Primitive } from '../typesetting/primitive.ts';
import { atLargestSizes, type Stacked } from './stack.ts';
import type { TagPart } from './words.ts';

export type ArrangementName = 'wide' | 'tall' | 'compact';

/** A place to lay one copy of the content out on, with its top left corner at 0, 0. */
export interface Face {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dotsPerInch: DotDensity;
  /** Whether the stock already bears the red header with the signal word, outside this face. */
  readonly signalWord: 'printed' | 'pre-printed';
}

export interface Arrangement {
  readonly name: ArrangementName;
  /** Tightness from 0, sizes as preferred, to 1, the legible minimum. */
  readonly at: (tightness: number, dropped: ReadonlySet<TagPart>) => Stacked;
}

export interface Droppable {
  /** Parts for which the stock is too narrow at any size. */
  readonly tooWide: readonly TagPart[];
  /** Parts that give way to the others where room is short, the first one first. */
  readonly inTurn: readonly TagPart[];
}

export type Arranged =
  | {
      readonly fits: true;
      readonly primitives: readonly Primitive[];
      readonly arrangement: ArrangementName;
      readonly dropped: readonly TagPart[];
    }
  | { readonly fits: false; readonly missing: TagPart };

export const oneArrangement = (
  name: ArrangementName,
  primitives: readonly Primitive[],
  dropped: readonly TagPart[] = [],
): Arranged => ({ fits: true, primitives, arrangement: name, dropped });

/**
 * The first arrangement that takes everything, at the largest sizes at which it does; nothing is dropped where any of
 * them can do without. Where none fits with all droppable parts dropped, the last one, which asks for least, says what is
 * missing.
 */
export const arrange = (arrangements: readonly Arrangement[], droppable: Droppable): Arranged => {
  let missing: TagPart = 'width';
  for (let count = 0; count <= droppable.inTurn.length; count += 1) {
    const dropped = [...droppable.tooWide, ...droppable.inTurn.slice(0, count)];
    const without = new Set(dropped);
    for (const { name, at } of arrangements) {
      const stacked = atLargestSizes((tightness) => at(tightness, without));
      if (stacked.fits) return { fits: true, primitives: stacked.primitives, arrangement: name, dropped };
      missing = stacked.missing;
    }
  }
  return { fits: false, missing };
};
