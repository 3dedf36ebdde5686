/** Symbols as modules: encoding, the smallest module that a scanner is asked to read, and whole printer dots. */
import bwipjs from 'bwip-js/node';
import { type DotDensity, dotMm, type PlacedSymbol } from './primitive.ts';

export type Symbology = 'Code 128' | 'QR Code' | 'Data Matrix';

export interface SymbolModules {
  readonly symbology: Symbology;
  readonly text: string;
  readonly columns: number;
  /** One for a linear symbol. */
  readonly rows: number;
  /** Row by row, 1 where the module is dark. */
  readonly dark: Uint8Array;
  /** Modules of light margin at the left and the right, and above and below. */
  readonly quietX: number;
  readonly quietY: number;
}

interface SymbologyRule {
  readonly quietX: number;
  readonly quietY: number;
  /** Width of one module: common practice for a hand-held scanner or a phone at arm's length, no source. */
  readonly minimumModuleMm: number;
  readonly encoder: string;
}

/**
 * Quiet zones: Code 128 10 X beside (ISO/IEC 15417), QR Code 4 X around (ISO/IEC 18004), Data Matrix 1 X around
 * (ISO/IEC 16022).
 */
const rules: Record<Symbology, SymbologyRule> = {
  'Code 128': {
    quietX: 10,
    quietY: 0,
    minimumModuleMm: 0.25,
    encoder: 'code128',
  },
  'QR Code': {
    quietX: 4,
    quietY: 4,
    minimumModuleMm: 0.33,
    encoder: 'qrcode',
  },
  'Data Matrix': {
    quietX: 1,
    quietY: 1,
    minimumModuleMm: 0.33,
    encoder: 'datamatrix',
  },
};

/** Bars no lower than 15 % of the length of the symbol, nor than 6.35 mm (common practice, no source). */
export const minimumBarHeightMm = (lengthMm: number): number => Math.max(6.35, 0.15 * lengthMm);

const encoded = new Map<string, SymbolModules>();
const encodedAtMost = 100;

/** How much of a QR Code can be restored (ISO/IEC 18004): H about 30 % of its codewords, L about 7 %. */
export type QrLevel = 'L' | 'H';

/**
 * The modules of the text; throws where the symbology cannot carry it. A QR Code is at level H, for a tag wears; on paper
 * that is filed, L takes a longer text.
 */
export const encodeSymbol = (symbology: Symbology, text: string, level: QrLevel = 'H'): SymbolModules => {
  const key = `${symbology} ${level} ${text}`;
  const known = encoded.get(key);
  if (known !== undefined) return known;
  if (encoded.size >= encodedAtMost) encoded.clear();
  const modules = encodeAnew(symbology, text, level);
  encoded.set(key, modules);
  return modules;
};

const encodeAnew = (symbology: Symbology, text: string, level: QrLevel): SymbolModules => {
  const { encoder, quietX, quietY } = rules[symbology];
  const options = symbology === 'QR Code' ? { eclevel: level } : {};
  const [symbol] = bwipjs.raw({ bcid: encoder, text, ...options });
  if (symbol === undefined) throw new Error(`No ${symbology} for ${text}`);
  const size =
    'pixs' in symbol
      ? {
          columns: symbol.pixx,
          rows: symbol.pixy,
          dark: Uint8Array.from(symbol.pixs),
        }
      : linearModules(symbol.sbs);
  return { symbology, text, ...size, quietX, quietY };
};

/** Bars and spaces alternate, bar first; each number is a width in modules. */
const linearModules = (widths: readonly number[]) => {
  const dark = widths.flatMap((width, index) => Array<number>(width).fill(index % 2 === 0 ? 1 : 0));
  return { columns: dark.length, rows: 1, dark: Uint8Array.from(dark) };
};

/** Modules across, quiet zone included. */
const columnsWithQuiet = (modules: SymbolModules): number => modules.columns + 2 * modules.quietX;

/**
 * The widest module, in whole dots, with which the symbol and its quiet zone stay within `availableMm`, and which is at
 * most `preferredMm` (never less than the minimum); `undefined` where even the minimum does not fit.
 */
export const moduleDots = (
  modules: SymbolModules,
  availableMm: number,
  preferredMm: number,
  dotsPerInch: DotDensity,
): number | undefined => {
  const dot = dotMm(dotsPerInch);
  const least = Math.ceil(rules[modules.symbology].minimumModuleMm / dot - 1e-9);
  const preferred = Math.max(least, Math.floor(preferredMm / dot + 1e-9));
  const fitting = Math.min(preferred, Math.floor(availableMm / dot / columnsWithQuiet(modules) + 1e-9));
  return fitting >= least ? fitting : undefined;
};

/** The symbol with its quiet zone's top left corner at the first dot at or after the place that is given. */
export const placeSymbol = (
  modules: SymbolModules,
  place: {
    readonly xMm: number;
    readonly yMm: number;
    readonly widthDots: number;
    readonly heightDots?: number;
  },
  dotsPerInch: DotDensity,
): PlacedSymbol => {
  const moduleHeightDots = place.heightDots ?? place.widthDots;
  const firstDot = (mm: number): number => Math.ceil(mm / dotMm(dotsPerInch) - 1e-9);
  return {
    kind: 'symbol',
    symbology: modules.symbology,
    text: modules.text,
    modules,
    dotsPerInch,
    leftDots: firstDot(place.xMm) + modules.quietX * place.widthDots,
    topDots: firstDot(place.yMm) + modules.quietY * moduleHeightDots,
    moduleWidthDots: place.widthDots,
    moduleHeightDots,
  };
};
