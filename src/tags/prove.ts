/** The proof that a raster can be read: its symbols, decoded from the very bytes that leave, are the ones meant. */
import { isRefusal } from '../domain/refusal.ts';
import { darkRuns } from '../typesetting/dark-runs.ts';
import type { PlacedSymbol } from '../typesetting/primitive.ts';
import type { Symbology } from '../typesetting/symbol.ts';
import { type ReadSymbol, readPlain, readSymbols } from './read/read-symbols.ts';

export interface TagSymbol {
  readonly symbology: Symbology;
  readonly text: string;
}

export const expectedSymbols = (placed: readonly PlacedSymbol[]): readonly TagSymbol[] =>
  placed.map(({ symbology, text }) => ({ symbology, text }));

/**
 * The first symbology of which a symbol does not read back, each drawn alone in its quiet zone on the dots on which it
 * stands; `undefined` where all do.
 */
export const unreadableSymbol = async (placed: readonly PlacedSymbol[]): Promise<Symbology | undefined> => {
  for (const symbol of placed) {
    const found = await readPlain(alone(symbol), symbol.symbology);
    if (found.length !== 1 || found[0] === undefined || !same(symbol, found[0])) return symbol.symbology;
  }
  return undefined;
};

const alone = (symbol: PlacedSymbol) => {
  const { columns, rows, quietX, quietY } = symbol.modules;
  const quietXDots = quietX * symbol.moduleWidthDots;
  const quietYDots = Math.max(2, quietY * symbol.moduleHeightDots);
  const width = columns * symbol.moduleWidthDots + 2 * quietXDots;
  const height = rows * symbol.moduleHeightDots + 2 * quietYDots;
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  const dots = new Uint32Array(data.buffer);
  for (const run of darkRuns({ ...symbol, leftDots: quietXDots, topDots: quietYDots })) {
    for (let row = 0; row < run.heightDots; row += 1) {
      const start = (run.topDots + row) * width + run.leftDots;
      dots.fill(opaqueBlack, start, start + run.widthDots);
    }
  }
  return { data, width, height, colorSpace: 'srgb' } as const;
};

/** Red, green and blue 0, alpha 255, in the byte order of the machine. */
const opaqueBlack = new Uint32Array(Uint8Array.of(0, 0, 0, 255).buffer)[0] ?? 0;

/** The first symbology that did not read back, or read back as something else; `undefined` where all is as expected. */
export const unreadable = async (
  png: Uint8Array,
  expected: readonly TagSymbol[],
): Promise<Symbology | undefined> => {
  const read = await readSymbols(png);
  const unmatched = isRefusal(read) ? [] : [...read];
  for (const symbol of expected) {
    const index = unmatched.findIndex((candidate) => same(symbol, candidate));
    if (index < 0) return symbol.symbology;
    unmatched.splice(index, 1);
  }
  return unmatched.length === 0 ? undefined : expected[0]?.symbology;
};

const same = (symbol: TagSymbol, read: ReadSymbol): boolean =>
  symbol.symbology === read.symbology && symbol.text === read.text;
