/** `import.status`: how a preview or an import stands. */
import { z } from 'zod';
import { importPreview, importPreviewSchema } from '../exchange/import-preview-view.ts';
import { defineOperation } from '../operation.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const importStatus = defineOperation({
  name: 'import.status',
  summary: 'How a preview or an import stands.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Rows. */
    workingSchema,
    z.object({ state: z.literal('previewed'), preview: importPreviewSchema }),
    z.object({
      state: z.literal('imported'),
      fileName: z.string(),
      sha256: z.string(),
      devices: z.int(),
      modelSheets: z.int(),
      inspections: z.int(),
      removed: z.int(),
      events: z.int(),
    }),
    refusedSchema,
  ]),
  run: async ({ importJobs, language }, { job }) =>
    workStatus(importJobs, job, language, 'import-job-not-known', (outcome) =>
      outcome.kind === 'previewed'
        ? { state: 'previewed' as const, preview: importPreview(outcome.prepared, language) }
        : { state: 'imported' as const, ...outcome.imported },
    ),
});
