/** Proposes a meaning for each column of a fleet list, from its heading or from what stands in it. */
import { parseBenchId } from '../bench-id/bench-id.ts';
import { type Cell, plainWords, type Table } from './cell.ts';
import { type ColumnMeaning, type ImportUnit, isRepeatable, unitsOf } from './column-meaning.ts';
import { type ColumnWords, type ValueWords, wordIn } from './import-words.ts';
import { unitNamed } from './read-quantity.ts';

export interface ColumnProposal {
  readonly column: number;
  readonly heading: string;
  readonly meaning: ColumnMeaning;
  /** What it rests on. A heading is certain; contents are a guess that a person confirms. */
  readonly because: 'heading' | 'contents' | 'nothing';
  /** That the heading names, as in `Length (ft)`. */
  readonly unit?: ImportUnit;
}

export const proposeColumns = (
  table: Table,
  columnWords: ColumnWords,
  valueWords: ValueWords,
): readonly ColumnProposal[] => {
  const taken = new Set<ColumnMeaning>();
  const take = (meaning: ColumnMeaning | undefined): ColumnMeaning | undefined => {
    if (meaning === undefined || (taken.has(meaning) && !isRepeatable(meaning))) return undefined;
    taken.add(meaning);
    return meaning;
  };
  const byHeading = table.headings.map((heading) => take(meaningOfHeading(heading, columnWords)));
  return table.headings.map((heading, column) => {
    const found = byHeading[column];
    const guessed =
      found === undefined ? take(meaningOfContents(cellsOf(table, column), valueWords)) : undefined;
    const meaning = found ?? guessed ?? 'ignore';
    const because = found !== undefined ? 'heading' : guessed !== undefined ? 'contents' : 'nothing';
    const unit = unitOfHeading(heading, meaning, valueWords);
    return { column, heading, meaning, because, ...(unit === undefined ? {} : { unit }) };
  });
};

/** Rows that are looked at for a guess. */
const lookedAt = 200;

const cellsOf = (table: Table, column: number): readonly Cell[] =>
  table.rows
    .slice(0, lookedAt)
    .flatMap(({ cells }) => cells[column] ?? [])
    .filter(({ text }) => text !== '');

const inBrackets = /[([]([^)\]]*)[)\]]/g;

const meaningOfHeading = (heading: string, words: ColumnWords): ColumnMeaning | undefined => {
  const plain = plainWords(heading);
  const bare = plainWords(heading.replace(inBrackets, ' '));
  const named = Object.entries(words) as [keyof ColumnWords, { en: string[]; es: string[] }][];
  return named.find(([, { en, es }]) => [...en, ...es].some((word) => word === plain || word === bare))?.[0];
};

const unitOfHeading = (
  heading: string,
  meaning: ColumnMeaning,
  words: ValueWords,
): ImportUnit | undefined => {
  const allowed = unitsOf(meaning);
  const bracketed = [...heading.matchAll(inBrackets)].map(([, text = '']) => text);
  return bracketed
    .map((text) => unitNamed(text, words))
    .find((unit) => unit !== undefined && allowed.includes(unit));
};

/** Only what nothing else looks like: our own codes, and the names of a material. */
const meaningOfContents = (cells: readonly Cell[], words: ValueWords): ColumnMeaning | undefined => {
  if (cells.length === 0) return undefined;
  const every = (is: (text: string) => boolean): boolean => cells.every(({ text }) => is(text));
  if (every((text) => parseBenchId(text).kind === 'exact')) return 'benchId';
  if (every((text) => wordIn(text, words.materials) !== undefined)) return 'lifelineMaterial';
  return undefined;
};
