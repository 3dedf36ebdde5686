/** The ink of a printer: with red, without, or without on stock that bears its red header already. */
import type { Layout, Primitive } from '../typesetting/primitive.ts';

export type Ink = 'colour' | 'monochrome' | 'pre-printed header';

/** Without red ink, what is red prints black. */
export const inInk = (layout: Layout, ink: Ink): Layout =>
  ink === 'colour' ? layout : { ...layout, primitives: layout.primitives.map(inBlack) };

const inBlack = (mark: Primitive): Primitive =>
  mark.kind !== 'symbol' && mark.colour === 'red' ? { ...mark, colour: 'black' } : mark;
