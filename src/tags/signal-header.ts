/** The head of a danger tag: signal word on red with the alert triangle, and the major message on black. */
import type { Language } from '../domain/message.ts';
import { type Block, headline, type Style, sizeForCapHeight } from '../typesetting/paragraph.ts';
import { capHeightEm, textWidthMm } from '../typesetting/typeface.ts';
import type { Face } from './arrange.ts';
import { majorMessageCapMm, signalWordCapMm } from './letter-height.ts';
import { alertTriangle, alertTriangleRatio } from './pictogram.ts';
import { type StackPart, sizeAt } from './stack.ts';
import { beside, indented, onPanel, pile } from './tag-layout.ts';
import { inEach, type TagPart, word } from './words.ts';

export interface HeaderSpace {
  readonly widthMm: number;
  readonly scale: number;
  readonly tightness: number;
  /** Ground around the words. */
  readonly paddingMm: number;
  /** Stock with a pre-printed header gets the major message alone. */
  readonly signalWord: Face['signalWord'];
}

const smallestTriangleMm = 10;

/** Signal word over major message, each over the full width. */
export const headerParts = (languages: readonly Language[], space: HeaderSpace): readonly StackPart[] => {
  const message = majorMessage(inEach(word('doNotUse'), languages), space);
  const parts: StackPart[] = [{ part: 'doNotUse', block: message, gapMm: 1, claim: 0 }];
  if (space.signalWord === 'pre-printed') return parts;
  const signal = signalWord(inEach(word('danger'), languages), space);
  return [{ part: 'signalWord', block: signal, gapMm: 0, claim: 0 }, ...parts];
};

export type HeaderRow =
  | { readonly fits: true; readonly block: Block }
  | { readonly fits: false; readonly missing: TagPart };

/** Signal word at the left, major message beside it on a ground of the same height. */
export const headerInOneRow = (languages: readonly Language[], space: HeaderSpace): HeaderRow => {
  const messages = inEach(word('doNotUse'), languages);
  if (space.signalWord === 'pre-printed') {
    const block = majorMessage(messages, space);
    return block === undefined ? { fits: false, missing: 'doNotUse' } : { fits: true, block };
  }
  const signals = inEach(word('danger'), languages);
  const leftMm = Math.max(
    space.widthMm * 0.58,
    sizeForCapHeight(signalWordCapMm) * widestEm(signals) + 2 * space.paddingMm + 0.01,
  );
  const rightMm = space.widthMm - panelGapMm - leftMm;
  const left = signalWord(signals, { ...space, widthMm: leftMm });
  if (left === undefined) return { fits: false, missing: 'signalWord' };
  const right = messagesOnPanel(messages, rightMm, left.heightMm, space);
  if (right === undefined) return { fits: false, missing: 'doNotUse' };
  return {
    fits: true,
    block: beside([
      { block: left, xMm: 0 },
      { block: right, xMm: leftMm + panelGapMm },
    ]),
  };
};

const panelGapMm = 1;

const widestEm = (words: readonly string[]): number =>
  Math.max(...words.map((text) => textWidthMm(text, 'bold', 1)));

/** The words one under the other in the middle of a black panel of the given height, as large as it takes. */
const messagesOnPanel = (
  words: readonly string[],
  widthMm: number,
  heightMm: number,
  space: HeaderSpace,
): Block | undefined => {
  const lines = words.length;
  const lineGap = 0.45;
  const capMm = Math.min(
    ((widthMm - 2 * space.paddingMm) / widestEm(words)) * capHeightEm,
    (heightMm - 2 * space.paddingMm) / (lines + (lines - 1) * lineGap),
  );
  if (capMm < majorMessageCapMm - 1e-9) return undefined;
  const style: Style = {
    role: 'major message',
    weight: 'bold',
    sizeMm: sizeForCapHeight(Math.min(capMm, 10 * space.scale)),
    colour: 'white',
  };
  const block = pile(
    words.map((text) =>
      indented(headline(text, style), (widthMm - textWidthMm(text, 'bold', style.sizeMm)) / 2),
    ),
    style.sizeMm * capHeightEm * lineGap,
  );
  return onPanel(block, widthMm, 0, (heightMm - block.heightMm) / 2, 'black', 2);
};

const signalWord = (words: readonly string[], space: HeaderSpace): Block | undefined => {
  const { paddingMm } = space;
  const innerMm = space.widthMm - 2 * paddingMm;
  const widest = widestEm(words);
  const preferredCapMm = sizeAt(
    space.tightness,
    (words.length === 1 ? 15 : 11.5) * space.scale,
    signalWordCapMm,
  );
  const smallestMm = sizeForCapHeight(signalWordCapMm);
  const roomMm = innerMm - smallestTriangleMm - paddingMm;
  const sizeMm = Math.max(smallestMm, Math.min(sizeForCapHeight(preferredCapMm), roomMm / widest));
  if (sizeMm * widest > innerMm) return undefined;
  const style: Style = {
    role: 'signal word',
    weight: 'bold',
    sizeMm,
    colour: 'white',
  };
  const lines = pile(
    words.map((text) => headline(text, style)),
    sizeMm * capHeightEm * 0.32,
  );
  const spareMm = innerMm - sizeMm * widest - paddingMm;
  const triangleMm = Math.min(spareMm, lines.heightMm / alertTriangleRatio);
  if (triangleMm < smallestTriangleMm * 0.9)
    return onPanel(lines, space.widthMm, paddingMm, paddingMm, 'red', 2);
  const triangle: Block = {
    heightMm: lines.heightMm,
    draw: (xMm, yMm) =>
      alertTriangle(xMm, yMm + (lines.heightMm - triangleMm * alertTriangleRatio) / 2, triangleMm),
  };
  const leftMm = (spareMm - triangleMm) / 2;
  const row = beside([
    { block: triangle, xMm: leftMm },
    { block: lines, xMm: leftMm + triangleMm + paddingMm },
  ]);
  return onPanel(row, space.widthMm, paddingMm, paddingMm, 'red', 2);
};

const majorMessage = (words: readonly string[], space: HeaderSpace): Block | undefined => {
  const { paddingMm } = space;
  const innerMm = space.widthMm - 2 * paddingMm;
  const smallestMm = sizeForCapHeight(majorMessageCapMm);
  const preferredMm = sizeForCapHeight(
    sizeAt(space.tightness, (words.length === 1 ? 10 : 6) * space.scale, majorMessageCapMm),
  );
  const widthsEm = words.map((text) => textWidthMm(text, 'bold', 1));
  const betweenEm = 0.8;
  const lineEm = widthsEm.reduce((sum, width) => sum + width, 0) + betweenEm * (words.length - 1);
  const oneLineMm = Math.min(preferredMm, innerMm / lineEm);
  const style = (sizeMm: number): Style => ({
    role: 'major message',
    weight: 'bold',
    sizeMm,
    colour: 'white',
  });
  if (oneLineMm >= smallestMm) {
    const slackMm = innerMm - lineEm * oneLineMm;
    const spreadMm = words.length === 1 ? 0 : Math.min(slackMm, oneLineMm);
    let xMm = (slackMm - spreadMm) / 2;
    const row = words.map((text, index) => {
      const placed = { block: headline(text, style(oneLineMm)), xMm };
      xMm += (widthsEm[index] ?? 0) * oneLineMm + betweenEm * oneLineMm + spreadMm;
      return placed;
    });
    return onPanel(beside(row), space.widthMm, paddingMm, Math.min(2, paddingMm), 'black', 2);
  }
  if (smallestMm * Math.max(...widthsEm) > innerMm) return undefined;
  const lines = words.map((text) => headline(text, style(smallestMm)));
  return onPanel(
    pile(lines, majorMessageCapMm * 0.4),
    space.widthMm,
    paddingMm,
    Math.min(2, paddingMm),
    'black',
    2,
  );
};
