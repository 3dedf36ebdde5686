/** What a printed face is made of, once the layout is done: four kinds of marks at places in millimetres from the top left. */
import type { SymbolModules, Symbology } from './symbol.ts';
import { shape, type Weight } from './typeface.ts';

export const dotDensities = [203, 300, 600] as const;
/** Printer dots per inch. */
export type DotDensity = (typeof dotDensities)[number];

/** 1 in = 25.4 mm exactly (NIST Special Publication 811). */
export const mmPerInch = 25.4;

/** `grey` is for words beside others, `pale` for the ground of a row; tags use neither. */
export type Colour = 'black' | 'white' | 'red' | 'grey' | 'pale';

export interface Box {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What a text is for; the height of its letters follows from it. */
export type TextRole =
  | 'signal word'
  | 'major message'
  | 'bench ID'
  | 'due month'
  | 'place'
  | 'bin code'
  | 'reason'
  | 'before return'
  | 'label'
  | 'detail'
  | 'heading'
  | 'report';

export interface Rectangle extends Box {
  readonly kind: 'rectangle';
  readonly colour: Colour;
  readonly radiusMm: number;
}

/** SVG path data with its own unit, filled or stroked with round joins. */
export interface Path {
  readonly kind: 'path';
  readonly data: string;
  readonly xMm: number;
  readonly yMm: number;
  /** Millimetres for one unit of the path. */
  readonly unitMm: number;
  readonly colour: Colour;
  /** Width of the line in units of the path; filled where it is absent. */
  readonly strokeUnits?: number;
  /** Half a turn about its place. */
  readonly turned?: boolean;
}

export interface Text {
  readonly kind: 'text';
  readonly text: string;
  readonly role: TextRole;
  readonly weight: Weight;
  readonly colour: Colour;
  /** Left end of the baseline. */
  readonly xMm: number;
  readonly baselineMm: number;
  /** Em size. */
  readonly sizeMm: number;
  /** Half a turn about its place: it reads from right to left, upside down. */
  readonly turned?: boolean;
}

/** A symbol on the dot grid of the printer; every module is a whole number of dots wide and high. */
export interface PlacedSymbol {
  readonly kind: 'symbol';
  readonly symbology: Symbology;
  readonly text: string;
  readonly modules: SymbolModules;
  readonly dotsPerInch: DotDensity;
  /** Top left corner of the dark modules, without the quiet zone. */
  readonly leftDots: number;
  readonly topDots: number;
  readonly moduleWidthDots: number;
  readonly moduleHeightDots: number;
}

/** A JPEG that fills its box. */
export interface Picture extends Box {
  readonly kind: 'picture';
  readonly jpeg: Uint8Array;
}

export type Primitive = Rectangle | Path | Text | PlacedSymbol;

export interface Layout {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dotsPerInch: DotDensity;
  /** Later marks lie over earlier ones. */
  readonly primitives: readonly Primitive[];
}

/** A page of a report: what a tag is made of, and pictures. */
export type PageMark = Primitive | Picture;
export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly primitives: readonly PageMark[];
}

/** The box around the ink of a text: accents and descenders included. */
export const inkBoxOf = (text: Text): Box => {
  const { ink } = shape(text.text, text.weight);
  const widthMm = (ink.rightEm - ink.leftEm) * text.sizeMm;
  const heightMm = (ink.topEm + ink.bottomEm) * text.sizeMm;
  return text.turned === true
    ? {
        xMm: text.xMm - ink.rightEm * text.sizeMm,
        yMm: text.baselineMm - ink.bottomEm * text.sizeMm,
        widthMm,
        heightMm,
      }
    : {
        xMm: text.xMm + ink.leftEm * text.sizeMm,
        yMm: text.baselineMm - ink.topEm * text.sizeMm,
        widthMm,
        heightMm,
      };
};

export const dotMm = (dotsPerInch: DotDensity): number => mmPerInch / dotsPerInch;

/** The box of the symbol with the quiet zone that its standard asks for. */
export const quietBoxOf = (symbol: PlacedSymbol): Box => {
  const dot = dotMm(symbol.dotsPerInch);
  const { columns, rows, quietX, quietY } = symbol.modules;
  const besideDots = quietX * symbol.moduleWidthDots;
  const aboveDots = quietY * symbol.moduleHeightDots;
  return {
    xMm: (symbol.leftDots - besideDots) * dot,
    yMm: (symbol.topDots - aboveDots) * dot,
    widthMm: (columns * symbol.moduleWidthDots + 2 * besideDots) * dot,
    heightMm: (rows * symbol.moduleHeightDots + 2 * aboveDots) * dot,
  };
};

export const textsOf = (layout: Layout): readonly Text[] =>
  layout.primitives.filter((primitive) => primitive.kind === 'text');

export const symbolsOf = (layout: Layout): readonly PlacedSymbol[] =>
  layout.primitives.filter((primitive) => primitive.kind === 'symbol');
