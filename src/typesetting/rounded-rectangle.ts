/** A rectangle with round corners as SVG path data in millimetres. */
import type { Rectangle } from './primitive.ts';

export const roundedRectangle = (box: Rectangle): string => {
  const { xMm, yMm, widthMm, heightMm } = box;
  const radius = Math.min(box.radiusMm, widthMm / 2, heightMm / 2);
  const right = xMm + widthMm;
  const bottom = yMm + heightMm;
  if (radius === 0) return `M${xMm},${yMm}L${right},${yMm}L${right},${bottom}L${xMm},${bottom}Z`;
  const arc = `A${radius},${radius},0,0,1`;
  return [
    `M${xMm + radius},${yMm}L${right - radius},${yMm}${arc},${right},${yMm + radius}`,
    `L${right},${bottom - radius}${arc},${right - radius},${bottom}`,
    `L${xMm + radius},${bottom}${arc},${xMm},${bottom - radius}`,
    `L${xMm},${yMm + radius}${arc},${xMm + radius},${yMm}Z`,
  ].join('');
};
