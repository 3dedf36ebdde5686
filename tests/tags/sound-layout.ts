/** What holds for every layout of a tag, worked out from its marks. */
import { expect } from 'vitest';
import {
  type Box,
  inkBoxOf,
  type Layout,
  type Path,
  type Primitive,
  quietBoxOf,
  symbolsOf,
} from '../../src/typesetting/primitive.ts';

export const right = (box: Box): number => box.xMm + box.widthMm;
export const bottom = (box: Box): number => box.yMm + box.heightMm;
const toleranceMm = 0.001;

export const overlap = (a: Box, b: Box): boolean =>
  a.xMm < right(b) - toleranceMm &&
  b.xMm < right(a) - toleranceMm &&
  a.yMm < bottom(b) - toleranceMm &&
  b.yMm < bottom(a) - toleranceMm;

export const inside = (inner: Box, outer: Box): boolean =>
  inner.xMm >= outer.xMm - toleranceMm &&
  inner.yMm >= outer.yMm - toleranceMm &&
  right(inner) <= right(outer) + toleranceMm &&
  bottom(inner) <= bottom(outer) + toleranceMm;

/** No coordinate of the drawing is beyond the largest number in it. */
const boxOfDrawing = (path: Path): Box => {
  const largest = Math.max(...(path.data.match(/[\d.]+/g) ?? []).map(Number));
  const sideMm = (largest + (path.strokeUnits ?? 0) / 2) * path.unitMm;
  const backMm = path.turned === true ? sideMm : 0;
  return { xMm: path.xMm - backMm, yMm: path.yMm - backMm, widthMm: sideMm, heightMm: sideMm };
};

interface Mark {
  readonly name: string;
  readonly box: Box;
}

export const marksOfOne = (primitive: Primitive): readonly Mark[] => {
  switch (primitive.kind) {
    case 'text':
      return [{ name: primitive.text, box: inkBoxOf(primitive) }];
    case 'symbol':
      return [{ name: primitive.symbology, box: quietBoxOf(primitive) }];
    case 'path':
      return primitive.strokeUnits === undefined ? [] : [{ name: 'drawing', box: boxOfDrawing(primitive) }];
    case 'rectangle':
      return [];
  }
};

/** Nothing overlaps anything else, leaves the stock or stands half on a panel; every quiet zone is clear. */
export const expectSound = (layout: Layout): void => {
  const stock: Box = {
    xMm: 0,
    yMm: 0,
    widthMm: layout.widthMm,
    heightMm: layout.heightMm,
  };
  const marks = layout.primitives.flatMap(marksOfOne);
  expect(marks.filter(({ box }) => !inside(box, stock)).map(({ name }) => name)).toEqual([]);
  const overlapping = marks.flatMap((mark, index) =>
    marks
      .slice(index + 1)
      .filter((other) => overlap(mark.box, other.box))
      .map((other) => `${mark.name} | ${other.name}`),
  );
  expect(overlapping).toEqual([]);
  const panels = layout.primitives.filter((primitive) => primitive.kind === 'rectangle');
  const onTheEdgeOfAPanel = marks.filter(({ box }) =>
    panels.some((panel) => overlap(box, panel) && !inside(box, panel)),
  );
  expect(onTheEdgeOfAPanel.map(({ name }) => name)).toEqual([]);
  const onPanels = symbolsOf(layout).filter((symbol) =>
    panels.some((panel) => overlap(quietBoxOf(symbol), panel)),
  );
  expect(onPanels).toEqual([]);
};
