/** Pictures in rows, each with what it shows under it. */
import type { PageMark } from '../typesetting/primitive.ts';
import { heightOf, linesOf, stackedLines } from './lines.ts';
import type { Told } from './report-words.ts';
import type { Piece, Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

export interface ReportPicture {
  readonly jpeg: Uint8Array;
  /** In dots. */
  readonly width: number;
  readonly height: number;
  readonly caption: Told;
}

const inARow = 3;
const gutterMm = 4;
const highestMm = 62;

export const pictureStrip = (pictures: readonly ReportPicture[], widthMm: number): Strip => {
  const rows = Array.from({ length: Math.ceil(pictures.length / inARow) }, (_, row) =>
    pictures.slice(row * inARow, (row + 1) * inARow),
  );
  const eachMm = (widthMm - gutterMm * (inARow - 1)) / inARow;
  return { pieces: rows.map((row) => rowOfPictures(row, eachMm)), gapMm: 2 };
};

const rowOfPictures = (pictures: readonly ReportPicture[], eachMm: number): Piece => {
  const set = pictures.map(({ jpeg, width, height, caption }) => {
    const scale = Math.min(eachMm / width, highestMm / height);
    const lines = linesOf(
      caption.map((text) => ({ text, style: textStyles.soft })),
      eachMm,
    );
    return { jpeg, widthMm: width * scale, heightMm: height * scale, lines };
  });
  const pictureMm = Math.max(...set.map(({ heightMm }) => heightMm));
  const captionMm = Math.max(...set.map(({ lines }) => heightOf(lines)));
  return {
    heightMm: pictureMm + 1 + captionMm + 2,
    draw: (xMm, yMm) =>
      set.flatMap(({ jpeg, widthMm, heightMm, lines }, index): readonly PageMark[] => {
        const leftMm = xMm + index * (eachMm + gutterMm);
        return [
          { kind: 'picture', jpeg, xMm: leftMm, yMm, widthMm, heightMm },
          ...stackedLines(lines).draw(leftMm, yMm + pictureMm + 1),
        ];
      }),
  };
};
