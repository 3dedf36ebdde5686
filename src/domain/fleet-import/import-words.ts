/** The words by which headings and values of a fleet list are understood, as data (`assets/import/`), English and Spanish. */
import { z } from 'zod';
import type { TypeOfUse } from '../due/type-of-use.ts';
import { messageSchema } from '../message.ts';
import { plainWords } from './cell.ts';
import { columnMeaningSchema, importUnitSchema } from './column-meaning.ts';

const wordList = z.array(z.string().min(1));

export const columnWordsSchema = z.record(
  columnMeaningSchema.exclude(['ignore']),
  z.object({ en: wordList.min(1), es: wordList.min(1) }),
);
export type ColumnWords = z.infer<typeof columnWordsSchema>;

export const valueWordsSchema = z.object({
  units: z.record(importUnitSchema, wordList.min(1)),
  /** Of January first. */
  months: z.array(wordList.min(1)).length(12),
  materials: z.object({ galvanised: wordList, stainless: wordList }),
  yes: wordList,
  no: wordList,
  results: z.object({ passed: wordList, removed: wordList, 'not stated': wordList }),
  standings: z.object({ 'in use': wordList, 'out of service': wordList }),
  uses: z.object({
    'infrequent to light': wordList,
    'moderate to heavy': wordList,
    'severe to continuous': wordList,
  } satisfies Record<TypeOfUse, typeof wordList>),
  /** Why an imported device is out of service. */
  removalReason: messageSchema,
});
export type ValueWords = z.infer<typeof valueWordsSchema>;

/** The name under which the text stands among the lists, letter case, accents and marks aside. */
export const wordIn = <Name extends string>(
  text: string,
  lists: Readonly<Record<Name, readonly string[]>>,
): Name | undefined => {
  const plain = plainWords(text);
  return (Object.keys(lists) as Name[]).find((name) =>
    lists[name].some((word) => plainWords(word) === plain),
  );
};
