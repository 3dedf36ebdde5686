/** What is given for an import: the file, and what a person said of it. */
import { z } from 'zod';
import { columnChoiceSchema } from '../../domain/fleet-import/column-meaning.ts';

/** 20 MB in base64. */
const mostBase64 = 27_000_000;

export const importRequestSchema = z.object({
  fileName: z.string().trim().min(1).max(200),
  /** The bytes of a CSV file or of a workbook (.xlsx), base64; at most 20 MB. */
  contentBase64: z.base64().max(mostBase64),
  /** A sheet of the workbook; the first one where it is absent. */
  sheet: z.string().max(200).optional(),
  /** Each column with its meaning. */
  columns: z.array(columnChoiceSchema).max(1000).optional(),
  /** True where a person said that regular users who are nobody here are left out. */
  withoutUnknownPeople: z.boolean().default(false),
});
export type ImportRequest = z.output<typeof importRequestSchema>;
