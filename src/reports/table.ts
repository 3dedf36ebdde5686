/** Tables whose head comes again on every page, and whose rows stay whole. */
import type { PageMark } from '../typesetting/primitive.ts';
import { heightOf, type Line, linesOf, type StyledText, stackedLines } from './lines.ts';
import type { Told } from './report-words.ts';
import { highestPieceMm, type Piece, type Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

export interface TableColumn {
  readonly title: string;
  /** Of the width, beside the shares of the others. */
  readonly share: number;
}

export type Cell = readonly StyledText[];

export const cell = (told: Told | string, style: StyledText['style'] = textStyles.cell): Cell =>
  (typeof told === 'string' ? [told] : told).map((text) => ({ text, style }));

const padding = { xMm: 1.2, yMm: 0.9 };
const ruleMm = 0.2;

export const table = (
  columns: readonly TableColumn[],
  rows: readonly (readonly Cell[])[],
  widthMm: number,
  gapMm = 1.5,
): Strip => {
  const places = placesOf(columns, widthMm);
  const titles = columns.map(({ title }) => cell(title, textStyles.cellHead));
  return {
    head: rowPiece(wrapped(titles, places), places, widthMm, 'pale'),
    pieces: rows.flatMap((row) => rowPieces(wrapped(row, places), places, widthMm)),
    gapMm,
  };
};

/** Names at the left and what they are at the right, without a head. */
export const facts = (
  pairs: readonly (readonly [string, Told | string])[],
  widthMm: number,
  gapMm = 1.5,
): Strip => {
  const places = placesOf(
    [
      { title: '', share: 3 },
      { title: '', share: 7 },
    ],
    widthMm,
  );
  return {
    pieces: pairs.flatMap(([name, value]) =>
      rowPieces(wrapped([cell(name, textStyles.soft), cell(value)], places), places, widthMm),
    ),
    gapMm,
  };
};

interface Place {
  readonly xMm: number;
  readonly widthMm: number;
}

const placesOf = (columns: readonly TableColumn[], widthMm: number): readonly Place[] => {
  const shares = columns.reduce((sum, { share }) => sum + share, 0);
  let xMm = 0;
  return columns.map(({ share }) => {
    const place = { xMm, widthMm: (widthMm * share) / shares };
    xMm += place.widthMm;
    return place;
  });
};

const wrapped = (row: readonly Cell[], places: readonly Place[]): readonly (readonly Line[])[] =>
  row.map((texts, column) => linesOf(texts, (places[column]?.widthMm ?? 0) - 2 * padding.xMm));

/** One piece; only a row that is higher than a piece may be is continued under itself. */
const rowPieces = (
  cells: readonly (readonly Line[])[],
  places: readonly Place[],
  widthMm: number,
): readonly Piece[] => {
  const mostMm = highestPieceMm - 2 * padding.yMm;
  const [first, rest] = splitAt(cells, mostMm);
  return rest.every((lines) => lines.length === 0)
    ? [rowPiece(first, places, widthMm)]
    : [rowPiece(first, places, widthMm), ...rowPieces(rest, places, widthMm)];
};

const splitAt = (cells: readonly (readonly Line[])[], mostMm: number) => {
  const counts = cells.map((lines) => {
    let heightMm = 0;
    const over = lines.findIndex((line) => {
      heightMm += line.heightMm;
      return heightMm > mostMm;
    });
    return over < 0 ? lines.length : over;
  });
  return [
    cells.map((lines, column) => lines.slice(0, counts[column])),
    cells.map((lines, column) => lines.slice(counts[column])),
  ] as const;
};

const rowPiece = (
  cells: readonly (readonly Line[])[],
  places: readonly Place[],
  widthMm: number,
  ground?: 'pale',
): Piece => {
  const heightMm = Math.max(...cells.map(heightOf)) + 2 * padding.yMm;
  return {
    heightMm,
    draw: (xMm, yMm) => [
      ...(ground === undefined ? [] : [box(xMm, yMm, widthMm, heightMm, ground)]),
      ...cells.flatMap((lines, column) =>
        stackedLines(lines).draw(xMm + (places[column]?.xMm ?? 0) + padding.xMm, yMm + padding.yMm),
      ),
      box(xMm, yMm + heightMm - ruleMm, widthMm, ruleMm, 'grey'),
    ],
  };
};

const box = (
  xMm: number,
  yMm: number,
  widthMm: number,
  heightMm: number,
  colour: 'pale' | 'grey',
): PageMark => ({ kind: 'rectangle', xMm, yMm, widthMm, heightMm, colour, radiusMm: 0 });
