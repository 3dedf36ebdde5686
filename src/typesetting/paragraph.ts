/** Text in lines: wrapped to a width, each line in a box that holds its accents and descenders. */
import type { Colour, Primitive, Text, TextRole } from './primitive.ts';
import { capHeightEm, printable, textWidthMm, type Weight } from './typeface.ts';

export interface Style {
  readonly role: TextRole;
  readonly weight: Weight;
  /** Em size in millimetres. */
  readonly sizeMm: number;
  readonly colour?: Colour;
}

/** Distance of baselines over the em. */
export const lineHeightEm = 1.18;
/** From the top of a line's box to its baseline: room for an accented capital. */
export const baselineEm = 0.92;

export interface Block {
  readonly heightMm: number;
  /** The marks of the block with its top left corner at the place. */
  readonly draw: (xMm: number, yMm: number) => readonly Primitive[];
}

/** The em size that gives capitals of this height. */
export const sizeForCapHeight = (capHeightMm: number): number => capHeightMm / capHeightEm;

/**
 * The text in lines no wider than `widthMm`. A word wider than a line is broken between characters where `breakWords`
 * says so; else there is no answer.
 */
export const wrap = (
  text: string,
  style: Pick<Style, 'weight' | 'sizeMm'>,
  widthMm: number,
  breakWords: boolean,
): readonly string[] | undefined => {
  const fits = (line: string): boolean => textWidthMm(line, style.weight, style.sizeMm) <= widthMm;
  const lines: string[] = [];
  let line = '';
  for (const word of printable(text).split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    if (fits(word)) continue;
    if (!breakWords) return undefined;
    const pieces = breakWord(word, fits);
    if (pieces === undefined) return undefined;
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  return line === '' ? lines : [...lines, line];
};

const breakWord = (word: string, fits: (line: string) => boolean): readonly string[] | undefined => {
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (!fits(character)) return undefined;
    if (fits(piece + character)) {
      piece += character;
    } else {
      pieces.push(piece);
      piece = character;
    }
  }
  return [...pieces, piece];
};

/** Each text in its own style, wrapped, one under the other; `undefined` where a word is too wide. */
export const paragraph = (
  texts: readonly { readonly text: string; readonly style: Style }[],
  widthMm: number,
  breakWords: boolean,
): Block | undefined => {
  const lines: { text: string; style: Style; topMm: number }[] = [];
  let heightMm = 0;
  for (const { text, style } of texts) {
    const wrapped = wrap(text, style, widthMm, breakWords);
    if (wrapped === undefined) return undefined;
    for (const line of wrapped) {
      lines.push({ text: line, style, topMm: heightMm });
      heightMm += style.sizeMm * lineHeightEm;
    }
  }
  return {
    heightMm,
    draw: (xMm, yMm) =>
      lines.map(({ text, style, topMm }) =>
        textAt(text, style, xMm, yMm + topMm + style.sizeMm * baselineEm),
      ),
  };
};

export const textAt = (text: string, style: Style, xMm: number, baselineMm: number): Text => ({
  kind: 'text',
  text,
  role: style.role,
  weight: style.weight,
  colour: style.colour ?? 'black',
  xMm,
  baselineMm,
  sizeMm: style.sizeMm,
});

/** Capitals and digits in one line, whose box is the height of the capitals alone. */
export const headline = (text: string, style: Style): Block => ({
  heightMm: style.sizeMm * capHeightEm,
  draw: (xMm, yMm) => [textAt(text, style, xMm, yMm + style.sizeMm * capHeightEm)],
});

/** The largest em size up to `preferredMm` at which the line is no wider than `widthMm`. */
export const sizeForWidth = (text: string, weight: Weight, widthMm: number, preferredMm: number): number =>
  Math.min(preferredMm, widthMm / textWidthMm(text, weight, 1));
