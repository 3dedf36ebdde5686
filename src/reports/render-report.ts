/** A report as a PDF: its strips on pages, each with what it is of at the head and its number at the foot. */
import { setImmediate } from 'node:timers/promises';
import { textAt } from '../typesetting/paragraph.ts';
import { PdfWriter } from '../typesetting/pdf.ts';
import type { PageMark } from '../typesetting/primitive.ts';
import { textWidthMm } from '../typesetting/typeface.ts';
import { flow } from './flow.ts';
import { linesOf } from './lines.ts';
import { type Frame, frameOf, type Paper } from './paper.ts';
import type { ReportWords } from './report-words.ts';
import type { Strip } from './strip.ts';
import { textStyles } from './type-sizes.ts';

export interface Report {
  readonly title: string;
  /** Whose report it is, at the head of each page: a station. */
  readonly station: string;
  /** What it is of, at the head of each page: a device, an inspection, a day. */
  readonly of: string;
  /** When what it says was recorded or asked for. */
  readonly at: Date;
  readonly strips: readonly Strip[];
}

export interface ReportControl {
  readonly signal?: AbortSignal;
  /** In pages. */
  onProgress?(progress: { readonly done: number; readonly of: number }): void;
}

export interface RenderedReport {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/** Pages between two looks at whether the work was canceled. */
const pagesAtOnce = 5;

/** Stops with what `signal` was aborted with. */
export const renderReport = async (
  report: Report,
  paper: Paper,
  words: ReportWords,
  { signal, onProgress }: ReportControl = {},
): Promise<RenderedReport> => {
  const frame = frameOf(paper);
  const pages = await flow(report.strips, frame, signal);
  const writer = await PdfWriter.begin({
    title: `${report.title}: ${report.of}`,
    language: words.languages[0] ?? 'en',
    createdAt: report.at,
  });
  for (const [index, marks] of pages.entries()) {
    const furniture = furnitureOf(report, frame, words, index + 1, pages.length);
    await writer.add({
      widthMm: frame.widthMm,
      heightMm: frame.heightMm,
      primitives: [...furniture, ...marks],
    });
    if (index % pagesAtOnce !== 0) continue;
    onProgress?.({ done: index + 1, of: pages.length });
    await setImmediate();
    signal?.throwIfAborted();
  }
  return { pdf: await writer.save(), pages: pages.length };
};

const headMm = 13;
const footMm = 11;

const furnitureOf = (
  report: Report,
  { leftMm, rightMm, heightMm, textWidthMm: widthMm }: Frame,
  words: ReportWords,
  page: number,
  pages: number,
): readonly PageMark[] => {
  const style = textStyles.furniture;
  const inOneLine = (text: string, share: number): string => {
    const [line = '', more] = linesOf([{ text, style }], widthMm * share).map((each) => each.text);
    return more === undefined ? line : `${line} …`;
  };
  const atRight = (text: string, yMm: number): PageMark =>
    textAt(text, style, rightMm - textWidthMm(text, style.weight, style.sizeMm), yMm);
  const rule = (yMm: number): PageMark => ({
    kind: 'rectangle',
    xMm: leftMm,
    yMm,
    widthMm,
    heightMm: 0.25,
    colour: 'grey',
    radiusMm: 0,
  });
  const footTopMm = heightMm - footMm;
  return [
    textAt(inOneLine(report.station, 0.4), style, leftMm, headMm),
    atRight(inOneLine(`${report.title}: ${report.of}`, 0.55), headMm),
    rule(headMm + 2),
    rule(footTopMm - 3.5),
    textAt(inOneLine(words.line('recordsOnly'), 0.8), style, leftMm, footTopMm),
    atRight(words.line('page', { page, pages }), footTopMm),
  ];
};
