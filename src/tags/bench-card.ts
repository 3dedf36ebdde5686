/** The bench card: on one page, the cautions, the order of the inspection, and the symbols that drive the walk. */
import type { BenchCard } from '../domain/bench-card.ts';
import type { Language, Message } from '../domain/message.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { type Block, paragraph, type Style, sizeForCapHeight } from '../typesetting/paragraph.ts';
import { toPdf } from '../typesetting/pdf.ts';
import { type DotDensity, type Layout, type Primitive, symbolsOf } from '../typesetting/primitive.ts';
import { commandRows } from './command-rows.ts';
import type { Command } from './command-sheet.ts';
import { armsLengthCapMm, smallestSizeMm } from './letter-height.ts';
import { type Paper, papers } from './paper.ts';
import { expectedSymbols, type TagSymbol, unreadableSymbol } from './prove.ts';
import { sizeAt } from './stack.ts';
import { beside, pile, type Stock } from './tag-layout.ts';
import { inOneLine, word } from './words.ts';

export interface PrintedBenchCard {
  readonly pdf: Uint8Array;
  readonly symbols: readonly TagSymbol[];
  /** Each symbol was decoded from the dots on which it stands. */
  readonly proof: 'read back';
}

const dotsPerInch: DotDensity = 300;
const marginMm = 12;
const columnGapMm = 8;
const numberMm = 7;
const bulletMm = 5;

/**
 * Cautions, headings and the names of the symbols are read at arm's length, before and during the work; the order of the
 * inspection by somebody who bends over the card, at half a metre (1/300 of it, ANSI Z535.2 §9.2.3).
 */
const sizes = {
  caution: { preferredMm: sizeForCapHeight(3), minimumMm: sizeForCapHeight(armsLengthCapMm) },
  order: {
    preferredMm: sizeForCapHeight(3),
    minimumMm: Math.max(smallestSizeMm, sizeForCapHeight(500 / 300)),
  },
  bars: { preferredMm: 12, minimumMm: 6.5 },
  gap: { preferredMm: 5, minimumMm: 2.2 },
} as const;

/** Refuses with `bench-card-does-not-fit` where the letters would have to be smaller than they can be read. */
export const renderBenchCard = async (
  card: BenchCard,
  commands: readonly Command[],
  paper: Paper,
  languages: readonly Language[],
): Promise<PrintedBenchCard | Refusal> => {
  const page = layOutBenchCard(card, commands, papers[paper], languages);
  if (isRefusal(page)) return refusal('bench-card-does-not-fit', { paper }, 'paper');
  const symbols = expectedSymbols(symbolsOf(page));
  const symbology = await unreadableSymbol(symbolsOf(page));
  if (symbology !== undefined) return refusal('tag-not-readable', { symbology });
  const title = inOneLine(word('benchCard'), languages);
  return { pdf: await toPdf([page], title), symbols, proof: 'read back' };
};

/** At the largest sizes at which everything stands on the page. */
export const layOutBenchCard = (
  card: BenchCard,
  commands: readonly Command[],
  stock: Stock,
  languages: readonly Language[],
): Layout | Refusal => {
  const steps = 20;
  for (let step = 0; step <= steps; step += 1) {
    const primitives = cardAt(step / steps, card, commands, stock, languages);
    if (primitives !== undefined) return { ...stock, dotsPerInch, primitives };
  }
  return refusal('bench-card-does-not-fit', { paper: '' });
};

/** `undefined` where it is too high, or a word too wide, at this tightness from 0 to 1. */
const cardAt = (
  tightness: number,
  card: BenchCard,
  commands: readonly Command[],
  stock: Stock,
  languages: readonly Language[],
): readonly Primitive[] | undefined => {
  const sizeOf = (name: keyof typeof sizes): number =>
    sizeAt(tightness, sizes[name].preferredMm, sizes[name].minimumMm);
  const widthMm = stock.widthMm - 2 * marginMm;
  const columnMm = (widthMm - columnGapMm * (languages.length - 1)) / languages.length;
  const heading = sizeOf('caution') * 1.15;
  const text: Style = { role: 'report', weight: 'regular', sizeMm: sizeOf('order') };
  const caution: Style = { role: 'label', weight: 'bold', sizeMm: sizeOf('caution') };
  const title: Style = { role: 'heading', weight: 'bold', sizeMm: heading };
  const inColumns = (blockIn: (language: Language) => Block | undefined): Block | undefined => {
    const blocks = languages.map(blockIn).filter((block) => block !== undefined);
    if (blocks.length < languages.length) return undefined;
    return beside(blocks.map((block, index) => ({ block, xMm: index * (columnMm + columnGapMm) })));
  };
  const headed = (text: string) => paragraph([{ text, style: title }], columnMm, false);
  const first = inColumns((language) =>
    allOf(
      [
        headed(`${word('benchCard')[language]} · ${word('benchCardFirst')[language]}`),
        ...[...card.cautions, word('benchCardDoubt')].map((each) =>
          marked('•', [{ text: each[language], style: caution }], bulletMm, columnMm),
        ),
      ],
      0.6,
    ),
  );
  const order = inColumns((language) => orderIn(card, language, { title, text, columnMm }));
  const symbols = commandRows(groupsOf(commands), languages, {
    widthMm,
    barsMm: sizeOf('bars'),
    sizeMm: sizes.caution.minimumMm,
    gapMm: sizeOf('gap'),
    dotsPerInch,
  });
  const above = inColumns((language) => headed(word('benchCardSymbols')[language]));
  if (first === undefined || order === undefined || symbols === undefined || above === undefined)
    return undefined;
  const whole = pile([first, order, pile([above, symbols], 1)], sizeOf('gap') + 1);
  return whole.heightMm > stock.heightMm - 2 * marginMm ? undefined : whole.draw(marginMm, marginMm);
};

/** The digits are found together. */
const groupsOf = (commands: readonly Command[]): readonly (readonly Command[])[] => {
  const isDigit = ({ label }: Command): boolean => /^\d$/.test(label.en);
  const first = commands.findIndex(isDigit);
  const last = commands.findLastIndex(isDigit);
  return first < 0
    ? [commands]
    : [commands.slice(0, first), commands.slice(first, last + 1), commands.slice(last + 1)];
};

const orderIn = (
  { steps, version }: BenchCard,
  language: Language,
  { title, text, columnMm }: { readonly title: Style; readonly text: Style; readonly columnMm: number },
): Block | undefined => {
  const heading = paragraph(
    [{ text: `${word('benchCardOrder')[language]} (${version})`, style: title }],
    columnMm,
    false,
  );
  const bold: Style = { ...text, weight: 'bold' };
  const rows = steps.map((step, index) =>
    marked(
      String(index + 1),
      [
        { text: step.checks[language], style: text },
        ...step.cautions.map((caution: Message) => ({ text: caution[language], style: bold })),
      ],
      numberMm,
      columnMm,
    ),
  );
  return allOf([heading, ...rows], 0.4);
};

interface Said {
  readonly text: string;
  readonly style: Style;
}

/** What is said, with its mark in bold before it, and every line as far in as the first. */
const marked = (
  mark: string,
  said: readonly [Said, ...Said[]],
  markMm: number,
  lineMm: number,
): Block | undefined => {
  const before = paragraph([{ text: mark, style: { ...said[0].style, weight: 'bold' } }], markMm, false);
  const block = paragraph(said, lineMm - markMm, false);
  return before === undefined || block === undefined
    ? undefined
    : beside([
        { block: before, xMm: 0 },
        { block, xMm: markMm },
      ]);
};

/** One under the other; `undefined` where one of them does not fit. */
const allOf = (blocks: readonly (Block | undefined)[], gapMm: number): Block | undefined => {
  const there = blocks.filter((block) => block !== undefined);
  return there.length === blocks.length ? pile(there, gapMm) : undefined;
};
