/**
 * The bench ID: ten characters on a tag, of which any four may be unreadable, or any two wrong, and the ID is still found.
 *
 * Six data symbols and four check symbols of a Reed–Solomon code over GF(32), x⁵ + x² + 1, with roots α¹ … α⁴. Any two
 * IDs differ in at least five characters. Positions count from 0 along the ten characters; the hyphen has none.
 */
import type { BenchId } from '../brand.ts';
import { GaloisField } from './galois-field.ts';
import { ReedSolomonCode } from './reed-solomon.ts';

/** The thirty-two characters by the value of their symbol; I, L, O and U are not among them. */
export const benchIdAlphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

export const benchIdDataSymbols = 6;
export const benchIdCheckSymbols = 4;

/** The code of the bench ID, for whoever weighs candidates symbol by symbol, such as a reader of worn tags. */
export const benchIdCode = new ReedSolomonCode({
  field: new GaloisField(0b100101),
  checkSymbols: benchIdCheckSymbols,
  firstRoot: 1,
});

/** Why a text cannot be a bench ID: how many characters it has, or a character that no bench ID contains. */
export type BenchIdFault = 'too short' | 'too long' | 'character not used';

export type ParsedBenchId =
  | { readonly kind: 'exact'; readonly id: BenchId }
  | { readonly kind: 'not a codeword' }
  | { readonly kind: 'malformed'; readonly why: BenchIdFault };

export type RepairedBenchId =
  | { readonly kind: 'exact'; readonly id: BenchId }
  | {
      readonly kind: 'suggestion';
      readonly id: BenchId;
      /** Positions that the suggestion fills in or alters, ascending; never empty. */
      readonly changed: readonly number[];
      /** Those of them where a character was given and the suggestion contradicts it. */
      readonly contradicted: readonly number[];
    }
  | { readonly kind: 'beyond repair' }
  | { readonly kind: 'malformed'; readonly why: BenchIdFault };

/**
 * The bench ID that carries the data: six random symbols, integers from 0 to 31, such as the low five bits of six random
 * bytes. Throws `RangeError` for anything else.
 */
export const benchIdFrom = (data: readonly number[]): BenchId => {
  if (data.length !== benchIdDataSymbols)
    throw new RangeError(`A bench ID has ${benchIdDataSymbols} data symbols.`);
  return fromSymbols(benchIdCode.encode(data));
};

/** The bench ID as people see it, `K7M3X-4Q9TD`. */
export const formatBenchId = (id: BenchId): string => `${id.slice(0, 5)}-${id.slice(5)}`;

/**
 * The bench ID that a text is, exactly: what a scanner delivers is used through this and never through `repairBenchId`.
 *
 * Small letters, spaces, hyphens and dashes do not matter; I and L read as 1, O as 0. Any other character, U included,
 * makes the text malformed. Of all ten-character words one in 32⁴ = 1,048,576 is a codeword.
 */
export const parseBenchId = (text: string): ParsedBenchId => {
  const symbols = charactersOf(text).map((character) => symbolOf.get(character));
  if (!symbols.every((symbol) => symbol !== undefined))
    return { kind: 'malformed', why: 'character not used' };
  const fault = lengthFault(symbols.length);
  if (fault !== undefined) return { kind: 'malformed', why: fault };
  return benchIdCode.isCodeword(symbols)
    ? { kind: 'exact', id: fromSymbols(symbols) }
    : { kind: 'not a codeword' };
};

/**
 * The bench ID that a person most likely read from a worn tag, where 2 · (wrong characters) + (unreadable ones) ≤ 4.
 *
 * **A suggestion is a guess. Nothing acts on it before a person has compared it with the device and confirmed it**, even
 * where just one device is registered under it.
 *
 * `?`, `*` and `_` stand for a character that cannot be read. So does U: no ID contains it, so it is a misreading of some
 * other letter. Any other foreign character makes the text malformed and not partly unreadable, so that dates,
 * addresses and other codes are not taken for worn IDs.
 *
 * How far a suggestion may be trusted (exact counts, of random ten-character words that have no ID behind them):
 *
 *   unreadable | wrong at most | become a suggestion
 *        0     |       2       | 43,556 in 1,048,576 (4.2 %), of them 1 exact
 *        1     |       1       |    280 in    32,768 (0.85 %)
 *        2     |       1       |    249 in     1,024 (24 %)
 *        3     |       0       |      1 in        32 (3.1 %)
 *        4     |       0       |      1 in         1 (every one: nothing is left to check with)
 *
 * Three wrong characters, one more than can be repaired, are refused in 97.8 % of cases and become a suggestion of another
 * ID in 2.2 % (78,120 of 3,574,920). Only five wrong characters or more can make one ID exactly another.
 */
export const repairBenchId = (text: string): RepairedBenchId => {
  const characters = charactersOf(text);
  const isKnown = (character: string): boolean => symbolOf.has(character) || unreadableMarks.has(character);
  if (!characters.every(isKnown)) return { kind: 'malformed', why: 'character not used' };
  const fault = lengthFault(characters.length);
  if (fault !== undefined) return { kind: 'malformed', why: fault };

  const unreadable = [...characters.keys()].filter((position) =>
    unreadableMarks.has(characters[position] ?? ''),
  );
  const decoding = benchIdCode.decode(
    characters.map((character) => symbolOf.get(character) ?? 0),
    unreadable,
  );
  if (!decoding.ok) return { kind: 'beyond repair' };
  const id = fromSymbols(decoding.codeword);
  const contradicted = decoding.corrected;
  const changed = [...unreadable, ...contradicted].sort((left, right) => left - right);
  return changed.length === 0 ? { kind: 'exact', id } : { kind: 'suggestion', id, changed, contradicted };
};

const symbolOf: ReadonlyMap<string, number> = new Map([
  ...[...benchIdAlphabet].flatMap((character, symbol): [string, number][] => [
    [character, symbol],
    [character.toLowerCase(), symbol],
  ]),
  ...[...'IiLl'].map((character): [string, number] => [character, 1]),
  ...[...'Oo'].map((character): [string, number] => [character, 0]),
]);

const unreadableMarks: ReadonlySet<string> = new Set('?*_Uu');

const separators = /[\s\u2010-\u2015\u2212-]/g;

const charactersOf = (text: string): readonly string[] => [...text.replace(separators, '')];

const lengthFault = (length: number): BenchIdFault | undefined => {
  if (length === benchIdDataSymbols + benchIdCheckSymbols) return undefined;
  return length < benchIdDataSymbols + benchIdCheckSymbols ? 'too short' : 'too long';
};

const fromSymbols = (symbols: readonly number[]): BenchId =>
  symbols.map((symbol) => benchIdAlphabet.charAt(symbol)).join('') as BenchId;
