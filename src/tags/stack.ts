/** Parts of a tag one under the other: what fits is spread over the height, what does not is named. */
import type { Block } from '../typesetting/paragraph.ts';
import type { Primitive } from '../typesetting/primitive.ts';
import type { TagPart } from './words.ts';

export interface StackPart {
  readonly part: TagPart;
  /** `undefined` where the part is too wide at these sizes. */
  readonly block: Block | undefined;
  /** Least distance to the part above, and its share of the height that is left over. */
  readonly gapMm: number;
  readonly gapShare?: number;
  /** Its share of the height left over where the part itself grows; `grow` draws it at the new height. */
  readonly grow?: {
    readonly share: number;
    readonly mostMm: number;
    readonly at: (heightMm: number) => Block;
  };
  /** The order in which parts claim room, lowest first; equal numbers in order of place. */
  readonly claim?: number;
}

export interface Place {
  readonly xMm: number;
  readonly yMm: number;
  readonly heightMm: number;
}

export type Stacked =
  | { readonly fits: true; readonly primitives: readonly Primitive[] }
  | { readonly fits: false; readonly missing: TagPart };

/** The parts within the height. The first part has no gap above it. */
export const stack = (parts: readonly StackPart[], place: Place): Stacked => {
  const missing = firstThatDoesNotFit(parts, place.heightMm);
  if (missing !== undefined) return { fits: false, missing };
  const grown = grow(parts, place.heightMm - neededMm(parts));
  const spareMm = Math.max(0, place.heightMm - neededMm(grown));
  const shares = grown.slice(1).reduce((sum, part) => sum + (part.gapShare ?? 0), 0);
  const primitives: Primitive[] = [];
  let yMm = place.yMm;
  for (const [index, part] of grown.entries()) {
    if (part.block === undefined) continue;
    if (index > 0) yMm += part.gapMm + (shares === 0 ? 0 : (spareMm * (part.gapShare ?? 0)) / shares);
    primitives.push(...part.block.draw(place.xMm, yMm));
    yMm += part.block.heightMm;
  }
  return { fits: true, primitives };
};

const neededMm = (parts: readonly StackPart[]): number =>
  parts.reduce((sum, part, index) => sum + (part.block?.heightMm ?? 0) + (index === 0 ? 0 : part.gapMm), 0);

const firstThatDoesNotFit = (parts: readonly StackPart[], heightMm: number): TagPart | undefined => {
  const byClaim = [...parts.entries()].sort(([, a], [, b]) => (a.claim ?? 0) - (b.claim ?? 0));
  let leftMm = heightMm + 1e-9;
  for (const [index, part] of byClaim) {
    if (part.block === undefined) return part.part;
    leftMm -= part.block.heightMm + (index === 0 ? 0 : part.gapMm);
    if (leftMm < 0) return part.part;
  }
  return undefined;
};

const grow = (parts: readonly StackPart[], spareMm: number): readonly StackPart[] =>
  parts.map((part) => {
    if (part.grow === undefined || part.block === undefined) return part;
    const heightMm = Math.min(part.grow.mostMm, part.block.heightMm + spareMm * part.grow.share);
    return heightMm > part.block.heightMm ? { ...part, block: part.grow.at(heightMm) } : part;
  });

/**
 * The layout at the largest sizes that fit: `at` is asked with 0 (sizes as preferred) up to 1 (the legible minimum), and
 * what is missing at the minimum is the answer where nothing fits.
 */
export const atLargestSizes = (at: (tightness: number) => Stacked): Stacked => {
  const smallest = at(1);
  if (!smallest.fits) return smallest;
  const steps = 16;
  for (let step = 0; step < steps; step += 1) {
    const stacked = at(step / steps);
    if (stacked.fits) return stacked;
  }
  return smallest;
};

/** From `preferredMm` at tightness 0 to `minimumMm` at 1; never under the minimum. */
export const sizeAt = (tightness: number, preferredMm: number, minimumMm: number): number =>
  Math.max(minimumMm, preferredMm - tightness * (preferredMm - minimumMm));
