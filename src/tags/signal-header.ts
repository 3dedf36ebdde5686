/** The head of a danger tag: signal word on red with the alert triangle, and the major message on black. */
import type { Language } from '../domain/message.ts';
import { majorMessageCapMm, signalWordCapMm } from './letter-height.ts';
import { type Block, headline, type Style, sizeForCapHeight } from './paragraph.ts';
import { alertTriangle, alertTriangleRatio } from './pictogram.ts';
import { sizeAt } from './stack.ts';
import { beside, onPanel, pile } from './tag-layout.ts';
import { capHeightEm, textWidthMm } from './typeface.ts';
import { inEach, word } from './words.ts';

export interface HeaderSpace {
  readonly widthMm: number;
  readonly scale: number;
  readonly tightness: number;
}

export interface SignalHeader {
  readonly signalWord: Block | undefined;
  readonly doNotUse: Block | undefined;
}

const paddingMm = 2.8;
const smallestTriangleMm = 10;

export const signalHeader = (languages: readonly Language[], space: HeaderSpace): SignalHeader => ({
  signalWord: signalWord(inEach(word('danger'), languages), space),
  doNotUse: majorMessage(inEach(word('doNotUse'), languages), space),
});

const signalWord = (words: readonly string[], space: HeaderSpace): Block | undefined => {
  const innerMm = space.widthMm - 2 * paddingMm;
  const widestEm = Math.max(...words.map((text) => textWidthMm(text, 'bold', 1)));
  const preferredCapMm = sizeAt(
    space.tightness,
    (words.length === 1 ? 15 : 11.5) * space.scale,
    signalWordCapMm,
  );
  const smallestMm = sizeForCapHeight(signalWordCapMm);
  const roomMm = innerMm - smallestTriangleMm - paddingMm;
  const sizeMm = Math.max(smallestMm, Math.min(sizeForCapHeight(preferredCapMm), roomMm / widestEm));
  if (sizeMm * widestEm > innerMm) return undefined;
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
  const spareMm = innerMm - sizeMm * widestEm - paddingMm;
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
    return onPanel(beside(row), space.widthMm, paddingMm, 2, 'black', 2);
  }
  const widestEm = Math.max(...widthsEm);
  if (smallestMm * widestEm > innerMm) return undefined;
  const lines = words.map((text) => headline(text, style(smallestMm)));
  return onPanel(pile(lines, majorMessageCapMm * 0.4), space.widthMm, paddingMm, 2, 'black', 2);
};
