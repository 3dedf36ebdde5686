/** The papers of an office printer. */
import type { Stock } from './tag-layout.ts';

export type Paper = 'A4' | 'Letter';

/** A4: ISO 216. Letter: 8½ × 11 in (ANSI/ASME Y14.1). */
export const papers: Readonly<Record<Paper, Stock>> = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
};
