/** The words by which fleet lists are understood, read from the product's data once. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  type ColumnWords,
  columnWordsSchema,
  type ValueWords,
  valueWordsSchema,
} from '../../domain/fleet-import/import-words.ts';

export interface ImportRules {
  readonly columns: ColumnWords;
  readonly values: ValueWords;
}

const loaded = new Map<string, Promise<ImportRules>>();

/** Throws where a file of the product itself is not valid: that is a defect of the product, not of a person's input. */
export const importRules = (productFolder: string): Promise<ImportRules> => {
  const known = loaded.get(productFolder) ?? load(join(productFolder, 'assets', 'import'));
  loaded.set(productFolder, known);
  return known;
};

const load = async (folder: string): Promise<ImportRules> => {
  const json = async (name: string): Promise<unknown> =>
    JSON.parse(await readFile(join(folder, name), 'utf8'));
  return {
    columns: columnWordsSchema.parse(await json('columns.json')),
    values: valueWordsSchema.parse(await json('words.json')),
  };
};
