/** An earlier inspection that a list declares: made before, elsewhere, on paper; never one of this program. */
import { z } from 'zod';
import { calendarDateSchema } from './brand.ts';

export const declaredResults = ['passed', 'removed', 'not stated'] as const;
export const declaredResultSchema = z.enum(declaredResults);
export type DeclaredResult = z.infer<typeof declaredResultSchema>;

export const declaredInspectionSchema = z.object({
  inspectedOn: calendarDateSchema,
  /** As the list says it; empty where it names nobody. */
  inspectedBy: z.string(),
  result: declaredResultSchema,
  note: z.string().optional(),
  /** Where that stands: the file, its SHA-256 in hex, and the row as a spreadsheet counts it. */
  source: z.object({ fileName: z.string(), sha256: z.string(), row: z.int().positive() }),
});
export type DeclaredInspection = z.infer<typeof declaredInspectionSchema>;
