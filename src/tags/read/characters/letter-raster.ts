/** A letter as shares of ink on a grid, at any size. */
import { letterOutlines } from './letter-outlines.ts';

export interface LetterRaster {
  /** In columns; not whole. */
  readonly advance: number;
  /** The first column lies at the start of the letter, the first row at `topEm` above the baseline. */
  readonly columns: number;
  readonly rows: number;
  /** Row by row, 0 no ink to 1 all ink. */
  readonly ink: Float32Array;
}

/** A little over the cap height of 0.668 em and the overshoot of round letters. */
export const topEm = 0.7;
/** Overshoot below the baseline. */
export const bottomEm = 0.03;

const samplesAcross = 4;
const samplesDown = 4;

/** `emColumns` and `emRows` are the size of the em on the grid. Throws for a character that no bench ID contains. */
export const letterRaster = (character: string, emColumns: number, emRows: number): LetterRaster => {
  const outline = letterOutlines[character];
  if (outline === undefined) throw new RangeError(`No outline of ${character}.`);
  const advance = (outline.advance / 1000) * emColumns;
  const columns = Math.ceil(advance) + 1;
  const rows = Math.ceil((topEm + bottomEm) * emRows);
  const edges = edgesOf(outline.path);
  const ink = new Float32Array(columns * rows);
  const share = 1 / (samplesAcross * samplesDown);
  for (let line = 0; line < rows * samplesDown; line += 1) {
    const y = 1000 * (topEm - (line + 0.5) / samplesDown / emRows);
    const row = Math.floor(line / samplesDown) * columns;
    for (const [from, to] of spansAt(edges, y)) {
      const first = Math.ceil((from / 1000) * emColumns * samplesAcross - 0.5);
      const last = Math.floor((to / 1000) * emColumns * samplesAcross - 0.5);
      for (
        let sample = Math.max(0, first);
        sample <= Math.min(last, columns * samplesAcross - 1);
        sample += 1
      ) {
        const cell = row + Math.floor(sample / samplesAcross);
        ink[cell] = (ink[cell] ?? 0) + share;
      }
    }
  }
  return { advance, columns, rows, ink };
};

interface Edge {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

const curveSteps = 8;

const edgesOf = (path: string): readonly Edge[] => {
  const edges: Edge[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  const lineTo = (toX: number, toY: number): void => {
    edges.push({ x1: x, y1: y, x2: toX, y2: toY });
    [x, y] = [toX, toY];
  };
  for (const [, command = '', numbers = ''] of path.matchAll(/([MLQZ])([^MLQZ]*)/g)) {
    const [a = 0, b = 0, c = 0, d = 0] = (numbers.match(/-?[\d.]+/g) ?? []).map(Number);
    if (command === 'M') [x, y, startX, startY] = [a, b, a, b];
    else if (command === 'L') lineTo(a, b);
    else if (command === 'Z') lineTo(startX, startY);
    else {
      const [fromX, fromY] = [x, y];
      for (let step = 1; step <= curveSteps; step += 1) {
        const t = step / curveSteps;
        const along = (p: number, q: number, r: number): number =>
          (1 - t) ** 2 * p + 2 * t * (1 - t) * q + t * t * r;
        lineTo(along(fromX, a, c), along(fromY, b, d));
      }
    }
  }
  return edges;
};

/** Where a level line is inside the outline, by the nonzero rule. */
const spansAt = (edges: readonly Edge[], y: number): readonly (readonly [number, number])[] => {
  const crossings: { x: number; turn: number }[] = [];
  for (const { x1, y1, x2, y2 } of edges) {
    if (y1 <= y === y2 <= y) continue;
    crossings.push({ x: x1 + ((y - y1) / (y2 - y1)) * (x2 - x1), turn: y2 > y1 ? 1 : -1 });
  }
  crossings.sort((a, b) => a.x - b.x);
  const spans: [number, number][] = [];
  let winding = 0;
  let from = 0;
  for (const { x, turn } of crossings) {
    if (winding === 0) from = x;
    winding += turn;
    if (winding === 0) spans.push([from, x]);
  }
  return spans;
};
