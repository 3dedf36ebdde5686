/** `ledger.verify-cancel`: ends a verification before it has come to a result. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const ledgerVerifyCancel = defineOperation({
  name: 'ledger.verify-cancel',
  summary: 'Ends a verification of the record.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ verifyJobs }, { job }) =>
    verifyJobs.cancel(job) ? {} : refusal('verify-job-not-known', { job }, 'job'),
});
