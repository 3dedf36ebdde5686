/** What the files of an export are: the tables with their columns, and the form of the events, for people and programs. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { recordedEventSchema } from '../../domain/event.ts';
import { messageSchema } from '../../domain/message.ts';

export const exportTables = [
  'devices',
  'model-sheets',
  'people',
  'inspections',
  'answers',
  'findings',
  'readings',
  'pictures',
  'reasons',
  'declared-inspections',
  'tags',
  'custody',
  'corrections',
  'evidence',
  'documents',
  'fall-cases',
  'return-batches',
] as const;
export type ExportTable = (typeof exportTables)[number];

const tableSchema = z.object({
  description: messageSchema,
  /** In the order in which they stand in the file, by their key. */
  columns: z.record(
    z.string(),
    z.object({ heading: z.string().min(1), type: z.string().min(1), description: messageSchema }),
  ),
});
export type TableDescription = z.infer<typeof tableSchema>;
export type TableDescriptions = Readonly<Record<ExportTable, TableDescription>>;

/** Throws where a file of the product itself is not valid: that is a defect of the product, not of a person's input. */
export const readTableDescriptions = async (productFolder: string): Promise<TableDescriptions> =>
  z
    .record(z.enum(exportTables), tableSchema)
    .parse(JSON.parse(await readFile(join(productFolder, 'assets', 'export', 'tables.json'), 'utf8')));

/** The version of the files as a whole: it rises when a column or a file is no longer what it was. */
export const exportVersion = 1;

export const schemaDocument = (tables: TableDescriptions): unknown => ({
  format: 'SRL Bench export',
  version: exportVersion,
  tables: exportTables.map((name) => ({
    file: `${name}.csv`,
    description: tables[name].description,
    columns: Object.entries(tables[name].columns).map(([key, column]) => ({ key, ...column })),
  })),
  events: {
    file: 'events.jsonl',
    /** JSON Schema, draft 2020-12. */
    schema: z.toJSONSchema(recordedEventSchema, { unrepresentable: 'any' }),
  },
});
