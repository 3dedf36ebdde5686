/** Versions of a picture in which a general decoder may find what wear has hidden: the most promising first. */
import { boxBlurred, type Field, pictureOf, reduced } from './field.ts';
import type { Picture } from './picture.ts';

export interface RestoredPicture {
  /** What was done, as shown with the evidence. */
  readonly name: Restoration;
  readonly picture: Picture;
  /** Dots of the original for one dot of this picture. */
  readonly scale: number;
}

export type Restoration =
  | 'evenly lit'
  | 'evenly lit, half size'
  | 'evenly lit, sharpened'
  | 'evenly lit, half size, sharpened'
  | 'evenly lit, medians'
  | 'two levels';

/** Made one by one, as they are asked for. */
export function* restoredPictures(field: Field): Generator<RestoredPicture> {
  const lit = evenlyLit(field);
  const half = reduced(lit, 2);
  yield { name: 'evenly lit', picture: pictureOf(lit), scale: 1 };
  yield { name: 'evenly lit, half size, sharpened', picture: pictureOf(sharpened(half, 2, 1.5)), scale: 2 };
  yield { name: 'evenly lit, sharpened', picture: pictureOf(sharpened(lit, 4, 2)), scale: 1 };
  yield { name: 'evenly lit, half size', picture: pictureOf(half), scale: 2 };
  yield { name: 'evenly lit, medians', picture: pictureOf(medians(half)), scale: 2 };
  yield { name: 'two levels', picture: pictureOf(twoLevels(half)), scale: 2 };
}

/** About as wide as a letter of a tag that fills half of the picture. */
const windowShare = 1 / 24;

/** Black and white of each neighbourhood to 0 and 255: mean and deviation around, as far as there is any contrast. */
const evenlyLit = (field: Field): Field => {
  const { width, height, values } = field;
  const reach = Math.max(8, Math.round(Math.max(width, height) * windowShare * 0.5));
  const mean = boxBlurred(field, reach).values;
  const squares = boxBlurred({ width, height, values: values.map((value) => value * value) }, reach).values;
  return {
    width,
    height,
    values: values.map((value, at) => {
      const middle = mean[at] ?? 0;
      const deviation = Math.sqrt(Math.max(0, (squares[at] ?? 0) - middle * middle));
      return 128 + (60 * (value - middle)) / Math.max(4, deviation);
    }),
  };
};

/** Unsharp mask: `strength` times what a blur of that reach takes away is added. */
const sharpened = (field: Field, reach: number, strength: number): Field => {
  const soft = boxBlurred(
    boxBlurred(field, Math.max(1, Math.round(reach / 2))),
    Math.max(1, Math.round(reach / 2)),
  ).values;
  return { ...field, values: field.values.map((value, at) => value + strength * (value - (soft[at] ?? 0))) };
};

const twoLevels = (field: Field): Field => ({
  ...field,
  values: field.values.map((value) => (value < 128 ? 0 : 255)),
});

/** The median of each dot and its eight neighbours. */
const medians = ({ width, height, values }: Field): Field => {
  const result = values.slice();
  const around = new Float32Array(9);
  for (let y = 1; y + 1 < height; y += 1)
    for (let x = 1; x + 1 < width; x += 1) {
      for (let each = 0; each < 9; each += 1)
        around[each] = values[(y + Math.floor(each / 3) - 1) * width + x + (each % 3) - 1] ?? 0;
      around.sort();
      result[y * width + x] = around[4] ?? 0;
    }
  return { width, height, values: result };
};
