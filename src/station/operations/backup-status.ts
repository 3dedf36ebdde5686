/** `backup.status`: how a backup stands. */
import { z } from 'zod';
import { backupMadeSchema } from '../../domain/keeping.ts';
import { defineOperation } from '../operation.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const backupStatus = defineOperation({
  name: 'backup.status',
  summary: 'How a backup stands.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Files, each written and read again. */
    workingSchema,
    backupMadeSchema.extend({
      state: z.literal('made'),
      file: z.string(),
      /** Earlier ones that are no longer kept. */
      removed: z.int(),
      onSameDisk: z.boolean(),
    }),
    refusedSchema,
  ]),
  run: async ({ keeper, language }, { job }) =>
    workStatus(keeper.backups, job, language, 'backup-job-not-known', (outcome) => ({
      state: 'made' as const,
      ...outcome,
    })),
});
