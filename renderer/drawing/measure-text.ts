/** How wide a text is in the typeface of the screens. */

const typeface = '"Atkinson Hyperlegible", "DejaVu Sans", sans-serif';
/** Room for the typeface that stands in until ours is loaded. */
const safety = 1.06;

let context: OffscreenCanvasRenderingContext2D | null | undefined;

/** In the unit of `size`, the height of the letters' body. */
export const measureText = (text: string, size: number): number => {
  context ??= new OffscreenCanvas(1, 1).getContext('2d');
  if (context === null) return text.length * size * 0.6;
  context.font = `700 ${size}px ${typeface}`;
  return context.measureText(text).width * safety;
};
