/** The words by which lists are understood, as the product ships them. */
import { fileURLToPath } from 'node:url';
import { importRules } from '../../src/station/exchange/import-rules.ts';

export const { columns: columnWords, values: valueWords } = await importRules(
  fileURLToPath(new URL('../..', import.meta.url)),
);
