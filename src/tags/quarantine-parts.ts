/** The parts of a quarantine tag, whatever the arrangement: what each asks for, and how it is set. */
import { hasNumberedReasons, type QuarantineTag } from '../domain/tag-content.ts';
import { type Block, paragraph, type Style } from '../typesetting/paragraph.ts';
import { linesBeforeReturn } from './evidence-line.ts';
import { smallestSizeMm } from './letter-height.ts';
import { type PartRule, sizeOf } from './part-rule.ts';
import { zonePictogram } from './pictogram.ts';
import { type StackPart, sizeAt } from './stack.ts';
import { dateText } from './tag-date.ts';
import { beside, pile } from './tag-layout.ts';
import { inEach, inOneLine, type TagPart, word } from './words.ts';

/** The tag, and the room and sizes that its parts are set in. */
export interface Sheet {
  readonly tag: QuarantineTag;
  readonly widthMm: number;
  readonly scale: number;
  readonly tightness: number;
}

export const quarantineRules = {
  reason: { preferredMm: 6.2, minimumMm: smallestSizeMm },
  beforeReturn: { preferredMm: 4.2, minimumMm: smallestSizeMm },
  removal: { preferredMm: 3.6, minimumMm: smallestSizeMm },
  heading: { preferredMm: 3.1, minimumMm: smallestSizeMm },
  device: { preferredMm: 3.1, minimumMm: smallestSizeMm },
  caption: { preferredMm: smallestSizeMm, minimumMm: smallestSizeMm },
} as const satisfies Record<string, PartRule>;

/** The name of the station gives way first, then the sentence that asks to leave the tag on. */
export const quarantineDroppable: readonly TagPart[] = ['station', 'keepTag'];

const labelStyle = ({ scale, tightness }: Sheet): Style => ({
  role: 'label',
  weight: 'regular',
  sizeMm: sizeOf(quarantineRules.caption, scale, tightness),
});

/** A thin rule over the words that name a section. */
const headed = (heading: string, inner: Block, sheet: Sheet): Block | undefined => {
  const sizeMm = sizeOf(quarantineRules.heading, sheet.scale, sheet.tightness);
  const words = paragraph(
    [{ text: heading, style: { role: 'label', weight: 'bold', sizeMm } }],
    sheet.widthMm,
    false,
  );
  if (words === undefined) return undefined;
  return pile([ruleAcross(sheet.widthMm), words, inner], 0.4);
};

export const reasonParts = (sheet: Sheet): readonly StackPart[] => {
  const { tag, widthMm, scale, tightness } = sheet;
  const sizeMm = sizeOf(quarantineRules.reason, scale, tightness);
  const pictogramMm = sizeMm * (tag.languages.length > 1 ? 2.1 : sizeAt(tightness, 2, 1.3));
  const textLeftMm = pictogramMm + sizeMm * 0.6;
  const isNumbered = hasNumberedReasons(tag);
  const blocks = tag.reasons.map(({ zone, sentence }, place): Block | undefined => {
    const texts = inEach(sentence, tag.languages).map((text, index) => ({
      text: isNumbered ? `${place + 1}. ${text}` : text,
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

export const beforeReturn = (sheet: Sheet): Block | undefined => {
  const { tag, widthMm, scale, tightness } = sheet;
  const sizeMm = sizeOf(quarantineRules.beforeReturn, scale, tightness);
  const boxMm = sizeMm * 0.8;
  const indentMm = sizeMm * 1.3;
  const items = linesBeforeReturn(tag).map((message): Block | undefined => {
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

const ruleAcross = (widthMm: number): Block => ({
  heightMm: 0.4,
  draw: (xMm, yMm) => [{ kind: 'rectangle', xMm, yMm, widthMm, heightMm: 0.4, colour: 'black', radiusMm: 0 }],
});

/** When and by whom it was removed at the left, where it is kept at the right. */
export const removalBeside = (sheet: Sheet): Block | undefined => {
  const gapMm = 4 * sheet.scale;
  const leftMm = (sheet.widthMm - gapMm) * 0.57;
  const left = removedWhen(sheet, leftMm);
  const right = keptWhere(sheet, sheet.widthMm - gapMm - leftMm);
  if (left === undefined || right === undefined) return undefined;
  const facts = beside([
    { block: left, xMm: 0 },
    { block: right, xMm: leftMm + gapMm },
  ]);
  return pile([ruleAcross(sheet.widthMm), facts], 0.6);
};

/** Where it is kept under when and by whom it was removed. */
export const removalUnder = (sheet: Sheet): Block | undefined => {
  const removed = removedWhen(sheet, sheet.widthMm);
  const kept = keptWhere(sheet, sheet.widthMm);
  if (removed === undefined || kept === undefined) return undefined;
  return pile([ruleAcross(sheet.widthMm), removed, kept], 0.6);
};

/** Removal and place in running lines, for a tag with little height. */
export const removalRunning = (sheet: Sheet): Block | undefined => {
  const { tag } = sheet;
  const style = strong(sheet);
  const removed = [
    inOneLine(word('removed'), tag.languages),
    dateText(tag.removedOn, tag.languages),
    inOneLine(word('by'), tag.languages),
    tag.removedBy,
  ].join(' ');
  const kept = `${inOneLine(word('keptAt'), tag.languages)} ${inOneLine(tag.keptAt, tag.languages)}`;
  return paragraph(
    [
      { text: removed, style },
      { text: kept, style },
    ],
    sheet.widthMm,
    sheet.tightness === 1,
  );
};

const strong = ({ scale, tightness }: Sheet): Style => ({
  role: 'detail',
  weight: 'bold',
  sizeMm: sizeOf(quarantineRules.removal, scale, tightness),
});

const removedWhen = (sheet: Sheet, widthMm: number): Block | undefined => {
  const { tag } = sheet;
  const style = strong(sheet);
  return paragraph(
    [
      { text: inOneLine(word('removed'), tag.languages), style: labelStyle(sheet) },
      { text: dateText(tag.removedOn, tag.languages), style },
      { text: `${inOneLine(word('by'), tag.languages)} ${tag.removedBy}`, style },
    ],
    widthMm,
    sheet.tightness === 1,
  );
};

const keptWhere = (sheet: Sheet, widthMm: number): Block | undefined => {
  const { tag } = sheet;
  const style = strong(sheet);
  return paragraph(
    [
      { text: inOneLine(word('keptAt'), tag.languages), style: labelStyle(sheet) },
      ...inEach(tag.keptAt, tag.languages).map((text) => ({ text, style })),
    ],
    widthMm,
    sheet.tightness === 1,
  );
};

/** The number of the tag; the station and the sentence that asks to leave the tag on, unless they gave way. */
export const footer = (sheet: Sheet, dropped: ReadonlySet<TagPart>): Block | undefined => {
  const { tag, widthMm, tightness } = sheet;
  const style = labelStyle(sheet);
  const number = `${inOneLine(word('tag'), tag.languages)} ${tag.tagNumber}`;
  const keepTag = {
    text: inEach(word('keepTag'), tag.languages).join(' '),
    style: { ...style, weight: 'bold' } as const,
  };
  return paragraph(
    [
      ...(dropped.has('keepTag') ? [] : [keepTag]),
      { text: dropped.has('station') ? number : `${number} · ${tag.station}`, style },
    ],
    widthMm,
    tightness === 1,
  );
};
