/** Headings and paragraphs. */
import type { Style } from '../typesetting/paragraph.ts';
import { linesOf, stackedLines } from './lines.ts';
import type { Told } from './report-words.ts';
import type { Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

/** Never the last thing on a page. */
export const heading = (text: string, widthMm: number, style: Style = textStyles.heading): Strip => ({
  pieces: [stackedLines(linesOf([{ text, style }], widthMm))],
  gapMm: style.sizeMm * 1.4,
  leadsOn: true,
});

/** The same strip, never the last thing on a page. */
export const leadingOn = (strip: Strip): Strip => ({ ...strip, leadsOn: true });

/** A paragraph in each language, which may go on on the next page after any line. */
export const prose = (
  told: Told,
  widthMm: number,
  style: Style = textStyles.body,
  gapMm = style.sizeMm * 0.6,
): Strip => ({
  pieces: linesOf(
    told.map((text) => ({ text, style })),
    widthMm,
  ).map((line) => stackedLines([line])),
  gapMm,
});

/** A few lines that stay together. */
export const whole = (
  told: Told,
  widthMm: number,
  style: Style = textStyles.body,
  gapMm = style.sizeMm * 0.6,
): Strip => {
  const texts = told.map((text) => ({ text, style }));
  return { pieces: [stackedLines(linesOf(texts, widthMm))], gapMm };
};
