/** Where a window comes up: where it was, unless nobody could see or reach it there. */
import type { Rectangle } from 'electron';

/** What of a window must be on a display for it to be found and moved by hand: a piece of its upper edge. */
const handleWidth = 160;
const handleHeight = 40;

export const firstSize = { width: 1366, height: 768 } as const;
export const leastSize = { width: 1024, height: 640 } as const;

/** `workAreas` are those of the displays, the first display first; none where nothing is known of them. */
export const placeOf = (
  remembered: Rectangle | undefined,
  workAreas: readonly Rectangle[],
): Rectangle | typeof firstSize => {
  const [first] = workAreas;
  if (first === undefined) return firstSize;
  if (remembered === undefined) return centred(firstSize, first);
  const there = workAreas.find((area) => isWithinReach(remembered, area));
  return there === undefined ? centred(remembered, first) : { ...remembered, ...sizeOn(there, remembered) };
};

const isWithinReach = (window: Rectangle, area: Rectangle): boolean => {
  const width = Math.min(window.x + window.width, area.x + area.width) - Math.max(window.x, area.x);
  const isEdgeIn = window.y >= area.y && window.y + handleHeight <= area.y + area.height;
  return isEdgeIn && width >= handleWidth;
};

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Never larger than the display, and large enough for our screens where the display is. */
const sizeOn = (area: Size, wanted: Size): Size => ({
  width: Math.min(Math.max(wanted.width, leastSize.width), area.width),
  height: Math.min(Math.max(wanted.height, leastSize.height), area.height),
});

const centred = (wanted: Size, area: Rectangle): Rectangle => {
  const { width, height } = sizeOn(area, wanted);
  return {
    x: Math.round(area.x + (area.width - width) / 2),
    y: Math.round(area.y + (area.height - height) / 2),
    width,
    height,
  };
};
