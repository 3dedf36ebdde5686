/** `ledger.verify-start`: begins to verify the record, which takes its time where it is long. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { verifyInJob, verifyInput } from '../verify-record.ts';

export const ledgerVerifyStart = defineOperation({
  name: 'ledger.verify-start',
  summary: 'Begins to verify the record.',
  kind: 'query',
  access: 'anyone',
  input: verifyInput,
  /** Ask `ledger.verify-status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, input) => ({
    job: context.verifyJobs.start((control) => verifyInJob(context, input, control)),
  }),
});
