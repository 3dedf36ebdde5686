/** Photographs with two tags of the fleet in them, on devices that hang one under the other. */
import type { BenchId } from '../../../src/domain/brand.ts';
import type { Picture } from '../../../src/tags/read/picture.ts';
import type { WearLevel } from './wear-amounts.ts';
import { wornTag } from './worn-tag.ts';

export interface TwoTags {
  readonly picture: Picture;
  readonly benchIds: readonly [BenchId, BenchId];
}

/** The second tag is that of the device half the fleet away, worn with another seed. */
export const twoTags = async (
  index: number,
  level: WearLevel,
  lowerLevel: WearLevel = level,
): Promise<TwoTags> => {
  const upper = await wornTag(index, level);
  const lower = await wornTag(index + secondTagAway, lowerLevel);
  return { picture: under(upper.picture, lower.picture), benchIds: [upper.benchId, lower.benchId] };
};

/** Below 1,000,000, so that tuning numbers stay tuning numbers up to here. */
const secondTagAway = 500_977;

/** The narrower one is continued to both sides by its last dots. */
const under = (upper: Picture, lower: Picture): Picture => {
  const width = Math.max(upper.width, lower.width);
  const luminance = new Uint8Array(width * (upper.height + lower.height));
  const copy = (from: Picture, firstRow: number): void => {
    const left = Math.floor((width - from.width) / 2);
    for (let row = 0; row < from.height; row += 1)
      for (let column = 0; column < width; column += 1) {
        const inside = Math.min(from.width - 1, Math.max(0, column - left));
        luminance[(firstRow + row) * width + column] = from.luminance[row * from.width + inside] ?? 0;
      }
  };
  copy(upper, 0);
  copy(lower, upper.height);
  return { width, height: upper.height + lower.height, luminance };
};
