/** The command sheet: printed symbols with which a gloved inspector answers by scanner alone. */
import type { Message } from '../domain/message.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import { sizeForCapHeight, sizeForWidth, textAt } from '../typesetting/paragraph.ts';
import { toPdf } from '../typesetting/pdf.ts';
import { type DotDensity, dotMm, type Layout, type Primitive, symbolsOf } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots, placeSymbol } from '../typesetting/symbol.ts';
import { type Paper, papers } from './paper.ts';
import { toPng } from './png.ts';
import { expectedSymbols, type TagSymbol, unreadable } from './prove.ts';
import type { Stock } from './tag-layout.ts';
import { inEach } from './words.ts';

export interface Command {
  readonly text: string;
  readonly label: Message;
}

export interface CommandSheet {
  readonly pdf: Uint8Array;
  readonly paper: Paper;
  /** In the order in which they stand on the sheet. */
  readonly symbols: readonly TagSymbol[];
  /** Every page was decoded from its raster and gave exactly its symbols. */
  readonly proof: 'read back';
}

/** Whole dots at 300 are whole dots on the 600 and 1200 of an office printer. */
const dotsPerInch: DotDensity = 300;
const marginMm = 14;
const columns = 2;
const rows = 10;
const labelCapMm = 5;
/** White between the columns, so that a label is not read on into the next one. */
const gutterMm = 8;
const barHeightMm = 13;
const moduleMm = 0.51;

/** Refuses with `tag-does-not-fit` where a command is too long for its cell. */
export const renderCommandSheet = async (
  commands: readonly Command[],
  paper: Paper,
): Promise<CommandSheet | Refusal> => {
  const pages: Layout[] = [];
  for (let first = 0; first < commands.length; first += columns * rows) {
    const page = layOutPage(commands.slice(first, first + columns * rows), papers[paper]);
    if ('refused' in page) return page;
    pages.push(page);
  }
  for (const page of pages) {
    const symbology = await unreadable(await toPng(page), expectedSymbols(symbolsOf(page)));
    if (symbology !== undefined) return refusal('tag-not-readable', { symbology });
  }
  const symbols = pages.flatMap((page) => expectedSymbols(symbolsOf(page)));
  return {
    pdf: await toPdf(pages, 'Command sheet'),
    paper,
    symbols,
    proof: 'read back',
  };
};

/** Down the left column first. Exported for the tests of the geometry. */
export const layOutPage = (commands: readonly Command[], paper: Stock): Layout | Refusal => {
  const cellWidthMm = (paper.widthMm - 2 * marginMm) / columns;
  const cellHeightMm = (paper.heightMm - 2 * marginMm) / rows;
  const primitives: Primitive[] = [];
  for (const [index, command] of commands.entries()) {
    const column = Math.floor(index / rows);
    const cell = cellMarks(command, {
      xMm: marginMm + column * cellWidthMm,
      yMm: marginMm + (index % rows) * cellHeightMm,
      widthMm: cellWidthMm,
    });
    if (cell === undefined)
      return refusal('tag-does-not-fit', {
        missing: command.text,
        widthMm: 297,
        heightMm: 420,
      });
    primitives.push(...cell);
  }
  return { ...paper, dotsPerInch, primitives };
};

const cellMarks = (
  command: Command,
  cell: {
    readonly xMm: number;
    readonly yMm: number;
    readonly widthMm: number;
  },
): readonly Primitive[] | undefined => {
  const modules = encodeSymbol('Code 128', command.text);
  const widthDots = moduleDots(modules, cell.widthMm, moduleMm, dotsPerInch);
  if (widthDots === undefined) return undefined;
  const dot = dotMm(dotsPerInch);
  const quietMm = modules.quietX * widthDots * dot;
  const innerMm = cell.widthMm - quietMm - gutterMm;
  const label = inEach(command.label, ['en', 'es']).join(' / ');
  const sizeMm = sizeForWidth(label, 'bold', innerMm, sizeForCapHeight(labelCapMm));
  const baselineMm = cell.yMm + labelCapMm * 1.35;
  const style = { role: 'label', weight: 'bold', sizeMm } as const;
  return [
    textAt(label, style, cell.xMm + quietMm, baselineMm),
    placeSymbol(
      modules,
      {
        xMm: cell.xMm,
        yMm: baselineMm + labelCapMm * 0.5,
        widthDots,
        heightDots: Math.ceil(barHeightMm / dot),
      },
      dotsPerInch,
    ),
  ];
};
