/** `report.status`: how a report stands. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const reportStatus = defineOperation({
  name: 'report.status',
  summary: 'How a report stands.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Pages. */
    workingSchema,
    z.object({
      state: z.literal('made'),
      path: z.string(),
      fileName: z.string(),
      pages: z.int().optional(),
      rows: z.int().optional(),
      opened: z.boolean(),
    }),
    refusedSchema,
  ]),
  run: async ({ reportJobs, language }, { job }) =>
    workStatus(reportJobs, job, language, 'report-job-not-known', (outcome) => ({
      state: 'made' as const,
      ...outcome,
    })),
});
