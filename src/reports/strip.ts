/** What a report is made of before it has pages: strips over the width of the text, each of pieces that stay whole. */
import type { PageMark } from '../typesetting/primitive.ts';

/** No piece is higher, so that one always fits under a heading and the head of its table on either paper. */
export const highestPieceMm = 150;

export interface Piece {
  readonly heightMm: number;
  /** The marks of the piece with its top left corner at the place. */
  readonly draw: (xMm: number, yMm: number) => readonly PageMark[];
}

export interface Strip {
  readonly pieces: readonly Piece[];
  /** Stands above the first piece, and again on each page on which the strip goes on. */
  readonly head?: Piece;
  /** Distance to the strip above, on the same page. */
  readonly gapMm: number;
  /** Never the last on a page. */
  readonly leadsOn?: boolean;
}
