/** The hole for the tie: a circle that no mark may touch, and the parts of a face that stay whole beside it. */
import type { Box } from '../typesetting/primitive.ts';

export interface Hole {
  /** Centre, from the top left of the stock. */
  readonly xMm: number;
  readonly yMm: number;
  readonly diameterMm: number;
}

export interface Circle {
  readonly xMm: number;
  readonly yMm: number;
  readonly radiusMm: number;
}

/** White kept around the hole for the eyelet or the head of the tie (common practice, no source). */
const collarMm = 1.5;

export const keepOutOf = (hole: Hole): Circle => ({
  xMm: hole.xMm,
  yMm: hole.yMm,
  radiusMm: hole.diameterMm / 2 + collarMm,
});

export const touches = (circle: Circle, box: Box): boolean => {
  const nearestX = Math.min(Math.max(circle.xMm, box.xMm), box.xMm + box.widthMm);
  const nearestY = Math.min(Math.max(circle.yMm, box.yMm), box.yMm + box.heightMm);
  return Math.hypot(circle.xMm - nearestX, circle.yMm - nearestY) < circle.radiusMm;
};

/** What is left of the box to the right of the circle, below it, to the left and above, largest first. */
export const partsBeside = (box: Box, circle: Circle): readonly Box[] => {
  const right = box.xMm + box.widthMm;
  const bottom = box.yMm + box.heightMm;
  const sides = {
    left: circle.xMm - circle.radiusMm,
    right: circle.xMm + circle.radiusMm,
    top: circle.yMm - circle.radiusMm,
    bottom: circle.yMm + circle.radiusMm,
  };
  const parts: readonly Box[] = [
    { ...box, xMm: sides.right, widthMm: right - sides.right },
    { ...box, yMm: sides.bottom, heightMm: bottom - sides.bottom },
    { ...box, widthMm: sides.left - box.xMm },
    { ...box, heightMm: sides.top - box.yMm },
  ];
  return parts
    .filter(({ widthMm, heightMm }) => widthMm > 0 && heightMm > 0)
    .sort((a, b) => b.widthMm * b.heightMm - a.widthMm * a.heightMm);
};
