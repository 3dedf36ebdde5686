/** Texts in one style each, wrapped to a width: the lines from which every strip is made. */
import { baselineEm, lineHeightEm, type Style, textAt, wrap } from '../typesetting/paragraph.ts';
import type { Piece } from './strip.ts';

export interface StyledText {
  readonly text: string;
  readonly style: Style;
}

export interface Line extends StyledText {
  readonly heightMm: number;
}

/** Words wider than the width are broken between characters. */
export const linesOf = (texts: readonly StyledText[], widthMm: number): readonly Line[] =>
  texts.flatMap(({ text, style }) =>
    text
      .split('\n')
      .flatMap((part) => wrap(part, style, widthMm, true) ?? [])
      .map((line) => ({ text: line, style, heightMm: style.sizeMm * lineHeightEm })),
  );

export const heightOf = (lines: readonly Line[]): number =>
  lines.reduce((sum, { heightMm }) => sum + heightMm, 0);

/** The lines one under the other. */
export const stackedLines = (lines: readonly Line[]): Piece => ({
  heightMm: heightOf(lines),
  draw: (xMm, yMm) => {
    let topMm = yMm;
    return lines.map(({ text, style, heightMm }) => {
      const mark = textAt(text, style, xMm, topMm + style.sizeMm * baselineEm);
      topMm += heightMm;
      return mark;
    });
  },
});
