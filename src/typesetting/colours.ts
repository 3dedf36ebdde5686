/** The inks of print. */
import type { Colour } from './primitive.ts';

/**
 * Red, green and blue from 0 to 255. The red of DANGER is near the safety red of ANSI Z535.1 (from memory); it is dark
 * enough to print as black where a printer has one colour.
 */
export const inks: Record<Colour, readonly [number, number, number]> = {
  black: [0, 0, 0],
  white: [255, 255, 255],
  red: [193, 14, 32],
  /** 7:1 on white, by the formula of WCAG 2.2. */
  grey: [85, 85, 85],
  pale: [236, 238, 240],
};
