/** The proof that a raster can be read: its symbols, decoded from the very bytes that leave, are the ones meant. */
import { isRefusal } from '../domain/refusal.ts';
import type { PlacedSymbol } from './primitive.ts';
import { type ReadSymbol, readSymbols } from './read/read-symbols.ts';
import type { Symbology } from './symbol.ts';

export interface TagSymbol {
  readonly symbology: Symbology;
  readonly text: string;
}

export const expectedSymbols = (placed: readonly PlacedSymbol[]): readonly TagSymbol[] =>
  placed.map(({ symbology, text }) => ({ symbology, text }));

/** The first symbology that did not read back, or read back as something else; `undefined` where all is as expected. */
export const unreadable = async (
  png: Uint8Array,
  expected: readonly TagSymbol[],
): Promise<Symbology | undefined> => {
  const read = await readSymbols(png);
  const found = isRefusal(read) ? [] : read;
  const missing = expected.find((symbol) => !found.some((candidate) => same(symbol, candidate)));
  if (missing !== undefined) return missing.symbology;
  const surplus = found.some((candidate) => !expected.some((symbol) => same(symbol, candidate)));
  return surplus || found.length !== expected.length ? expected[0]?.symbology : undefined;
};

const same = (symbol: TagSymbol, read: ReadSymbol): boolean =>
  symbol.symbology === read.symbology && symbol.text === read.text;
