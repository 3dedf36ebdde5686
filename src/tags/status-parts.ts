/** The parts of a status tag, whatever the arrangement: what each asks for, and how it is set. */
import type { StatusTag } from '../domain/tag-content.ts';
import {
  type Block,
  headline,
  paragraph,
  type Style,
  sizeForCapHeight,
  sizeForWidth,
  textAt,
} from '../typesetting/paragraph.ts';
import type { TextRole } from '../typesetting/primitive.ts';
import { capHeightEm, textWidthMm } from '../typesetting/typeface.ts';
import { armsLengthCapMm, smallestSizeMm } from './letter-height.ts';
import { type PartRule, sizeOf } from './part-rule.ts';
import { sizeAt } from './stack.ts';
import { dateText, monthText } from './tag-date.ts';
import { onPanel, pile } from './tag-layout.ts';
import { inEach, inOneLine, type TagPart, type Word, word } from './words.ts';

/** Bench ID and month are read at arm's length; everything else at the legible minimum or above. */
export const statusRules = {
  benchId: { preferredMm: sizeForCapHeight(7), minimumMm: sizeForCapHeight(armsLengthCapMm) },
  dueMonth: { preferredMm: sizeForCapHeight(9), minimumMm: sizeForCapHeight(armsLengthCapMm) },
  dueHeading: { preferredMm: 2.8, minimumMm: smallestSizeMm },
  dueDate: { preferredMm: 3.3, minimumMm: smallestSizeMm },
  inspection: { preferredMm: 3.2, minimumMm: smallestSizeMm },
  device: { preferredMm: 2.9, minimumMm: smallestSizeMm },
  caption: { preferredMm: smallestSizeMm, minimumMm: smallestSizeMm },
} as const satisfies Record<string, PartRule>;

/** The name of the station gives way where room is short: bench ID and QR Code lead to it too. */
export const statusDroppable: readonly TagPart[] = ['station'];

export interface PartSpace {
  readonly widthMm: number;
  readonly scale: number;
  readonly tightness: number;
}

const sized = (role: TextRole, weight: Style['weight'], sizeMm: number): Style => ({ role, weight, sizeMm });

/**
 * White on black: the month large, the full date beside it, or under it where the month would be too small beside it, or
 * where height is plenty.
 */
export const duePanel = (
  tag: StatusTag,
  space: PartSpace,
  { leastMonthCapMm = 0, under = false }: { leastMonthCapMm?: number; under?: boolean } = {},
): Block | undefined => {
  const { widthMm, scale, tightness } = space;
  const paddingMm = Math.max(1, 2.2 * scale);
  const innerMm = widthMm - 2 * paddingMm;
  const label = dueHeading(tag, innerMm, space);
  const date = dateText(tag.dueOn, tag.languages);
  const dateMm = sizeOf(statusRules.dueDate, scale, tightness);
  const preferredMm = sizeForCapHeight(
    sizeAt(tightness, 9 * scale, Math.max(armsLengthCapMm, leastMonthCapMm)),
  );
  const line =
    (under ? undefined : monthBesideDate(tag, { date, dateMm, innerMm, preferredMm, gapMm: 3 * scale })) ??
    monthOverDate(tag, { date, dateMm, innerMm, preferredMm, gapMm: 1 });
  if (label === undefined || line === undefined) return undefined;
  return onPanel(
    pile([label, line], Math.max(0.6, 0.8 * scale)),
    widthMm,
    paddingMm,
    Math.max(1, sizeAt(tightness, 1.6, 1.2) * scale),
    'black',
    1.2 * scale,
  );
};

const dueWords = {
  'documented inspection': 'nextDue',
  revalidation: 'revalidationDue',
  'service life': 'serviceLifeEnds',
} as const satisfies Record<string, Word>;

const dueHeading = (tag: StatusTag, innerMm: number, space: PartSpace): Block | undefined => {
  const headings = inEach(word(dueWords[tag.dueFor ?? 'documented inspection']), tag.languages);
  const preferredMm = sizeOf(statusRules.dueHeading, space.scale, space.tightness);
  const inOne = headings.join(' · ');
  const oneLineMm = sizeForWidth(inOne, 'bold', innerMm - 0.01, preferredMm);
  const texts = oneLineMm >= smallestSizeMm ? [inOne] : headings;
  const sizeMm = Math.max(
    smallestSizeMm,
    Math.min(...texts.map((text) => sizeForWidth(text, 'bold', innerMm - 0.01, preferredMm))),
  );
  const style: Style = { ...sized('label', 'bold', sizeMm), colour: 'white' };
  return paragraph(
    texts.map((text) => ({ text, style })),
    innerMm,
    false,
  );
};

interface MonthLine {
  readonly date: string;
  readonly dateMm: number;
  readonly innerMm: number;
  readonly preferredMm: number;
  readonly gapMm: number;
}

const monthStyle = (sizeMm: number): Style => ({ ...sized('due month', 'bold', sizeMm), colour: 'white' });
const dateStyle = (sizeMm: number): Style => ({ ...sized('detail', 'regular', sizeMm), colour: 'white' });

const monthBesideDate = (tag: StatusTag, line: MonthLine): Block | undefined => {
  const { date, dateMm, innerMm, preferredMm, gapMm } = line;
  const month = monthText(tag.dueOn, tag.languages);
  const dateWidthMm = textWidthMm(date, 'regular', dateMm);
  const monthMm = sizeForWidth(month, 'bold', innerMm - gapMm - dateWidthMm, preferredMm);
  const heightMm = monthMm * capHeightEm;
  if (heightMm < armsLengthCapMm) return undefined;
  return {
    heightMm,
    draw: (xMm, yMm) => [
      textAt(month, monthStyle(monthMm), xMm, yMm + heightMm),
      textAt(date, dateStyle(dateMm), xMm + innerMm - dateWidthMm, yMm + heightMm),
    ],
  };
};

const monthOverDate = (tag: StatusTag, line: MonthLine): Block | undefined => {
  const month = monthText(tag.dueOn, tag.languages);
  const monthMm = sizeForWidth(month, 'bold', line.innerMm, line.preferredMm);
  const date = paragraph([{ text: line.date, style: dateStyle(line.dateMm) }], line.innerMm, false);
  if (date === undefined || monthMm * capHeightEm < armsLengthCapMm) return undefined;
  return pile([headline(month, monthStyle(monthMm)), date], line.gapMm * 0.5);
};

/** Maker, model and rated length over the serial number. */
export const devicePart = (tag: StatusTag, space: PartSpace): Block | undefined => {
  const sizeMm = sizeOf(statusRules.device, space.scale, space.tightness);
  return paragraph(
    [
      {
        text: `${tag.manufacturer} ${tag.model} · ${tag.ratedLength}`,
        style: sized('detail', 'bold', sizeMm),
      },
      {
        text: `${inOneLine(word('serial'), tag.languages)} ${tag.serial}`,
        style: sized('detail', 'regular', sizeMm),
      },
    ],
    space.widthMm,
    space.tightness === 1,
  );
};

/** The sentence that the manufacturer's marking is what counts, one line or more for each language. */
export const notMarkingPart = (tag: StatusTag, space: PartSpace): Block | undefined => {
  const style = sized('detail', 'regular', sizeOf(statusRules.caption, space.scale, space.tightness));
  return paragraph(
    inEach(word('notMarking'), tag.languages).map((text) => ({ text, style })),
    space.widthMm,
    space.tightness === 1,
  );
};

/** When and by whom it was inspected. */
export const inspectionPart = (tag: StatusTag, space: PartSpace): Block | undefined => {
  const { value, label } = factStyles(space);
  return paragraph(
    [
      ...inEach(word('inspected'), tag.languages).map((text) => ({ text, style: label })),
      { text: dateText(tag.inspectedOn, tag.languages), style: value },
      { text: tag.inspectorMark, style: value },
    ],
    space.widthMm,
    space.tightness === 1,
  );
};

/** The number of the tag, over the name of the station where that is kept. */
export const tagNumberPart = (tag: StatusTag, space: PartSpace, station: boolean): Block | undefined => {
  const { value, label } = factStyles(space);
  const number = `${inOneLine(word('tag'), tag.languages)} ${tag.tagNumber}`;
  const oneLineMm = sizeForWidth(number, value.weight, space.widthMm - 0.01, value.sizeMm);
  const sizeMm = Math.max(smallestSizeMm, oneLineMm);
  return paragraph(
    [
      { text: number, style: { ...value, sizeMm } },
      ...(station ? [{ text: tag.station, style: label }] : []),
    ],
    space.widthMm,
    space.tightness === 1,
  );
};

/** When and by whom it was inspected, in one running line. */
export const inspectionRunning = (tag: StatusTag, space: PartSpace): Block | undefined => {
  const text = [
    inOneLine(word('inspected'), tag.languages),
    dateText(tag.inspectedOn, tag.languages),
    inOneLine(word('by'), tag.languages),
    tag.inspectorMark,
  ].join(' ');
  return paragraph([{ text, style: factStyles(space).value }], space.widthMm, space.tightness === 1);
};

/** Maker, model and rated length over the serial number, the number of the tag and the station. */
export const deviceRunning = (tag: StatusTag, space: PartSpace, station: boolean): Block | undefined => {
  const sizeMm = sizeOf(statusRules.device, space.scale, space.tightness);
  const serial = `${inOneLine(word('serial'), tag.languages)} ${tag.serial}`;
  const number = `${inOneLine(word('tag'), tag.languages)} ${tag.tagNumber}`;
  return paragraph(
    [
      {
        text: `${tag.manufacturer} ${tag.model} · ${tag.ratedLength}`,
        style: sized('detail', 'bold', sizeMm),
      },
      {
        text: [serial, number, ...(station ? [tag.station] : [])].join(' · '),
        style: sized('detail', 'regular', sizeMm),
      },
    ],
    space.widthMm,
    space.tightness === 1,
  );
};

const factStyles = ({ scale, tightness }: PartSpace): { value: Style; label: Style } => ({
  value: sized('detail', 'bold', sizeOf(statusRules.inspection, scale, tightness)),
  label: sized('label', 'regular', sizeOf(statusRules.caption, scale, tightness)),
});
