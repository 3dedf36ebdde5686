/** Strips to pages: nothing is clipped, no heading ends a page, and the head of a table comes again where it goes on. */
import { setImmediate } from 'node:timers/promises';
import type { PageMark } from '../typesetting/primitive.ts';
import type { Frame } from './paper.ts';
import type { Piece, Strip } from './strip.ts';

/** Pieces between two looks at whether the work was canceled. */
const piecesAtOnce = 200;

/** The marks of each page, at their places. Stops with what `signal` was aborted with. */
export const flow = async (
  strips: readonly Strip[],
  frame: Frame,
  signal?: AbortSignal,
): Promise<readonly (readonly PageMark[])[]> => {
  const pages = new Pages(frame);
  let placed = 0;
  for (const [index, strip] of strips.entries()) {
    const [first, ...rest] = strip.pieces;
    if (first === undefined) continue;
    pages.begin(strip, first, leastMm(strips, index));
    for (const piece of rest) {
      pages.goOn(strip, piece);
      placed += 1;
      if (placed % piecesAtOnce !== 0) continue;
      await setImmediate();
      signal?.throwIfAborted();
    }
  }
  return pages.marks;
};

/** What a strip needs on the page on which it begins, with whatever it leads on to. */
const leastMm = (strips: readonly Strip[], index: number): number => {
  const strip = strips[index];
  const [first] = strip?.pieces ?? [];
  if (strip === undefined || first === undefined) return 0;
  const headMm = strip.head?.heightMm ?? 0;
  if (strip.leadsOn !== true) return headMm + first.heightMm;
  const ownMm = strip.pieces.reduce((sum, { heightMm }) => sum + heightMm, headMm);
  return ownMm + (strips[index + 1]?.gapMm ?? 0) + leastMm(strips, index + 1);
};

class Pages {
  readonly #frame: Frame;
  readonly #pages: PageMark[][] = [[]];
  #yMm: number;

  constructor(frame: Frame) {
    this.#frame = frame;
    this.#yMm = frame.topMm;
  }

  get marks(): readonly (readonly PageMark[])[] {
    return this.#pages;
  }

  begin(strip: Strip, first: Piece, neededMm: number): void {
    const isAtTop = this.#yMm === this.#frame.topMm;
    if (!isAtTop && this.#yMm + strip.gapMm + neededMm > this.#frame.bottomMm) this.#turn();
    else if (!isAtTop) this.#yMm += strip.gapMm;
    if (strip.head !== undefined) this.#place(strip.head);
    this.#place(first);
  }

  goOn({ head }: Strip, piece: Piece): void {
    if (this.#yMm + piece.heightMm > this.#frame.bottomMm + 1e-9) {
      this.#turn();
      if (head !== undefined) this.#place(head);
    }
    this.#place(piece);
  }

  #turn(): void {
    this.#pages.push([]);
    this.#yMm = this.#frame.topMm;
  }

  #place(piece: Piece): void {
    this.#pages.at(-1)?.push(...piece.draw(this.#frame.leftMm, this.#yMm));
    this.#yMm += piece.heightMm;
  }
}
