/** The smallest stock that takes a tag, among stocks that are easily had. */
import type { PrintableTag } from '../domain/tag-content.ts';
import type { DotDensity } from '../typesetting/primitive.ts';
import { stockOfFace } from './form.ts';
import { type LayoutOptions, layOutTag } from './lay-out-tag.ts';
import type { Stock } from './tag-layout.ts';

/** The longest side that is drawn: A3 (ISO 216). */
export const longestSideMm = 420;

/** Widths and heights of one face, either way up; the last ones are A6 to A3 (ISO 216). */
const commonSizes: readonly (readonly [number, number])[] = [
  [40, 20],
  [50, 25],
  [50, 30],
  [60, 40],
  [50, 50],
  [75, 50],
  [80, 60],
  [100, 50],
  [75, 75],
  [100, 75],
  [100, 100],
  [125, 75],
  [150, 100],
  [148, 105],
  [200, 100],
  [210, 148],
  [297, 210],
  [420, 297],
];

const facesByArea: readonly Stock[] = commonSizes
  .flatMap(([a, b]): Stock[] =>
    a === b
      ? [{ widthMm: a, heightMm: b }]
      : [
          { widthMm: b, heightMm: a },
          { widthMm: a, heightMm: b },
        ],
  )
  .sort((a, b) => a.widthMm * a.heightMm - b.widthMm * b.heightMm);

/** For the same form, ink and hole; `undefined` where not even A3 takes the tag. */
export const smallestStock = (
  content: PrintableTag,
  dotsPerInch: DotDensity,
  options: LayoutOptions = {},
): Stock | undefined => {
  const headerMm = options.ink === 'pre-printed header' ? (options.headerMm ?? 0) : 0;
  return facesByArea
    .map((face) => stockOfFace(face, options.form ?? { shape: 'flat' }, headerMm))
    .find(
      (stock) =>
        Math.max(stock.widthMm, stock.heightMm) <= longestSideMm &&
        layOutTag(content, stock, dotsPerInch, options).fits,
    );
};
