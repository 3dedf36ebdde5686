/** `ledger.verify-status`: how a verification stands. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { verificationSchema } from '../verify-record.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const ledgerVerifyStatus = defineOperation({
  name: 'ledger.verify-status',
  summary: 'How a verification of the record stands.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Events. */
    workingSchema,
    z.object({ state: z.literal('verified'), ...verificationSchema.shape }),
    refusedSchema,
  ]),
  run: async ({ verifyJobs, language }, { job }) =>
    workStatus(verifyJobs, job, language, 'verify-job-not-known', (outcome) => ({
      state: 'verified' as const,
      ...outcome,
    })),
});
