/** `export.status`: how an export stands. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const exportStatus = defineOperation({
  name: 'export.status',
  summary: 'How an export stands.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Events. */
    workingSchema,
    z.object({
      state: z.literal('exported'),
      folder: z.string(),
      events: z.int(),
      rootHash: z.string(),
      files: z.int(),
      pictures: z.int(),
      picturesLost: z.int(),
    }),
    refusedSchema,
  ]),
  run: async ({ exportJobs, language }, { job }) =>
    workStatus(exportJobs, job, language, 'export-job-not-known', (outcome) => ({
      state: 'exported' as const,
      ...outcome,
    })),
});
