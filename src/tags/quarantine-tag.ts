/** The layout of the quarantine tag: the signal word first, then every reason, then what a person needs to act on it. */
import type { QuarantineTag } from '../domain/tag-content.ts';
import { writeTagText } from '../domain/tag-text.ts';
import { identityBlock } from './identity-block.ts';
import { smallestSizeMm } from './letter-height.ts';
import { type Block, paragraph, type Style } from './paragraph.ts';
import { zonePictogram } from './pictogram.ts';
import type { DotDensity } from './primitive.ts';
import { signalHeader } from './signal-header.ts';
import { atLargestSizes, type StackPart, sizeAt, stack } from './stack.ts';
import { dateText } from './tag-date.ts';
import { beside, edgeMm, type LaidOut, misfit, pile, type Stock } from './tag-layout.ts';
import { inEach, inOneLine, word } from './words.ts';

export const quarantineTagStock: Stock = { widthMm: 100, heightMm: 150 };

const marginMm = 3;

export const layOutQuarantineTag = (tag: QuarantineTag, stock: Stock, dotsPerInch: DotDensity): LaidOut => {
  const scale = Math.min(
    stock.widthMm / quarantineTagStock.widthMm,
    stock.heightMm / quarantineTagStock.heightMm,
  );
  const widthMm = stock.widthMm - 2 * marginMm;
  const identity = identityBlock(tag, writeTagText(tag), {
    widthMm,
    scale,
    dotsPerInch,
    besideMm: marginMm - edgeMm,
  });
  if (!identity.fits) return misfit(identity.missing);
  const stacked = atLargestSizes((tightness) => {
    const sheet: Sheet = { tag, widthMm, scale, tightness };
    const header = signalHeader(tag.languages, sheet);
    const parts: StackPart[] = [
      { part: 'signalWord', block: header.signalWord, gapMm: 0, claim: 0 },
      { part: 'doNotUse', block: header.doNotUse, gapMm: 1, claim: 0 },
      ...reasonParts(sheet),
      {
        part: 'beforeReturn',
        block: beforeReturn(sheet),
        gapMm: 2,
        gapShare: 2,
        claim: 3,
      },
      {
        part: 'removal',
        block: removal(sheet),
        gapMm: 1.6,
        gapShare: 2,
        claim: 1,
      },
      {
        part: identity.missing,
        block: identity.at(tightness),
        gapMm: 1.6,
        gapShare: 2,
        claim: 0,
      },
      {
        part: 'removal',
        block: footer(sheet),
        gapMm: 0.8,
        gapShare: 0.5,
        claim: 1,
      },
    ];
    return stack(parts, {
      xMm: marginMm,
      yMm: marginMm,
      heightMm: stock.heightMm - 2 * marginMm,
    });
  });
  if (!stacked.fits) return misfit(stacked.missing);
  return {
    fits: true,
    layout: { ...stock, dotsPerInch, primitives: stacked.primitives },
  };
};

interface Sheet {
  readonly tag: QuarantineTag;
  readonly widthMm: number;
  readonly scale: number;
  readonly tightness: number;
}

const labelStyle: Style = {
  role: 'label',
  weight: 'regular',
  sizeMm: smallestSizeMm,
};

/** A thin rule over the words that name a section. */
const headed = (heading: string, inner: Block, sheet: Sheet): Block | undefined => {
  const sizeMm = sizeAt(sheet.tightness, 3.1 * sheet.scale, smallestSizeMm);
  const words = paragraph(
    [{ text: heading, style: { role: 'label', weight: 'bold', sizeMm } }],
    sheet.widthMm,
    false,
  );
  if (words === undefined) return undefined;
  const rule: Block = {
    heightMm: 0.4,
    draw: (xMm, yMm) => [
      {
        kind: 'rectangle',
        xMm,
        yMm,
        widthMm: sheet.widthMm,
        heightMm: 0.4,
        colour: 'black',
        radiusMm: 0,
      },
    ],
  };
  return pile([rule, words, inner], 0.4);
};

const reasonParts = (sheet: Sheet): readonly StackPart[] => {
  const { tag, widthMm, scale, tightness } = sheet;
  const sizeMm = sizeAt(tightness, 6.2 * scale, smallestSizeMm);
  const pictogramMm = sizeMm * (tag.languages.length > 1 ? 2.1 : sizeAt(tightness, 2, 1.3));
  const textLeftMm = pictogramMm + sizeMm * 0.6;
  const blocks = tag.reasons.map(({ zone, sentence }): Block | undefined => {
    const texts = inEach(sentence, tag.languages).map((text, index) => ({
      text,
      style: {
        role: 'reason',
        weight: index === 0 ? 'bold' : 'regular',
        sizeMm,
      } as const,
    }));
    const words = paragraph(texts, widthMm - textLeftMm, tightness === 1);
    if (words === undefined) return undefined;
    const heightMm = Math.max(words.heightMm, pictogramMm);
    return {
      heightMm,
      draw: (xMm, yMm) => [
        zonePictogram(zone, xMm, yMm + Math.min(sizeMm * 0.15, heightMm - pictogramMm), pictogramMm),
        ...words.draw(xMm + textLeftMm, yMm + (heightMm - words.heightMm) / 2),
      ],
    };
  });
  const [first, ...others] = blocks;
  const heading = inOneLine(word('reasons'), tag.languages);
  return [
    {
      part: 'reasons',
      block: first === undefined ? undefined : headed(heading, first, sheet),
      gapMm: 1.6,
      gapShare: 2,
      claim: 2,
    },
    ...others.map(
      (block): StackPart => ({
        part: 'reasons',
        block,
        gapMm: sizeMm * 0.25,
        gapShare: 0.7,
        claim: 2,
      }),
    ),
  ];
};

const beforeReturn = (sheet: Sheet): Block | undefined => {
  const { tag, widthMm, scale, tightness } = sheet;
  const sizeMm = sizeAt(tightness, 4.2 * scale, smallestSizeMm);
  const boxMm = sizeMm * 0.8;
  const indentMm = sizeMm * 1.3;
  const items = tag.beforeReturn.map((message): Block | undefined => {
    const texts = inEach(message, tag.languages).map((text, index) => ({
      text,
      style: {
        role: 'before return',
        weight: index === 0 ? 'bold' : 'regular',
        sizeMm,
      } as const,
    }));
    const words = paragraph(texts, widthMm - indentMm, tightness === 1);
    if (words === undefined) return undefined;
    const box = openBox(boxMm, sizeMm * 0.25);
    return beside([
      { block: box, xMm: 0 },
      { block: words, xMm: indentMm },
    ]);
  });
  if (items.some((item) => item === undefined)) return undefined;
  const list = pile(
    items.filter((item) => item !== undefined),
    sizeMm * 0.2,
  );
  return headed(inOneLine(word('beforeReturn'), tag.languages), list, sheet);
};

/** A box to tick by hand. */
const openBox = (sideMm: number, downMm: number): Block => ({
  heightMm: sideMm + downMm,
  draw: (xMm, yMm) => [
    {
      kind: 'path',
      data: 'M1,1H9V9H1Z',
      xMm,
      yMm: yMm + downMm,
      unitMm: sideMm / 10,
      colour: 'black',
      strokeUnits: 1.2,
    },
  ],
});

/** When and by whom it was removed at the left, where it is kept at the right. */
const removal = (sheet: Sheet): Block | undefined => {
  const { tag, widthMm, scale, tightness } = sheet;
  const sizeMm = sizeAt(tightness, 3.6 * scale, smallestSizeMm);
  const strong: Style = { role: 'detail', weight: 'bold', sizeMm };
  const gapMm = 4 * scale;
  const leftMm = (widthMm - gapMm) * 0.57;
  const breakWords = tightness === 1;
  const left = paragraph(
    [
      { text: inOneLine(word('removed'), tag.languages), style: labelStyle },
      { text: dateText(tag.removedOn, tag.languages), style: strong },
      {
        text: `${inOneLine(word('by'), tag.languages)} ${tag.removedBy}`,
        style: strong,
      },
    ],
    leftMm,
    breakWords,
  );
  const right = paragraph(
    [
      { text: inOneLine(word('keptAt'), tag.languages), style: labelStyle },
      ...inEach(tag.keptAt, tag.languages).map((text) => ({
        text,
        style: strong,
      })),
    ],
    widthMm - gapMm - leftMm,
    breakWords,
  );
  if (left === undefined || right === undefined) return undefined;
  const facts = beside([
    { block: left, xMm: 0 },
    { block: right, xMm: leftMm + gapMm },
  ]);
  const rule: Block = {
    heightMm: 0.4,
    draw: (xMm, yMm) => [
      {
        kind: 'rectangle',
        xMm,
        yMm,
        widthMm,
        heightMm: 0.4,
        colour: 'black',
        radiusMm: 0,
      },
    ],
  };
  return pile([rule, facts], 0.6);
};

const footer = (sheet: Sheet): Block | undefined => {
  const { tag, widthMm, tightness } = sheet;
  return paragraph(
    [
      {
        text: inEach(word('keepTag'), tag.languages).join(' '),
        style: { ...labelStyle, weight: 'bold' },
      },
      {
        text: `${inOneLine(word('tag'), tag.languages)} ${tag.tagNumber} · ${tag.station}`,
        style: labelStyle,
      },
    ],
    widthMm,
    tightness === 1,
  );
};
