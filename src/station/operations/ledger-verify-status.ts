/** `ledger.verify-status`: how a verification stands. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';
import { verificationSchema } from '../verify-record.ts';
import { notCountedYet } from '../work-jobs.ts';

export const ledgerVerifyStatus = defineOperation({
  name: 'ledger.verify-status',
  summary: 'How a verification of the record stands.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ job: z.number().int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Events; `of` is 0 while it is not known yet. */
    z.object({ state: z.literal('working'), done: z.number().int(), of: z.number().int() }),
    z.object({ state: z.literal('verified'), ...verificationSchema.shape }),
    z.object({ state: z.literal('refused'), code: z.string(), sentence: z.string() }),
  ]),
  run: async ({ verifyJobs, language }, { job }) => {
    const status = verifyJobs.stateOf(job);
    switch (status?.state) {
      case undefined:
        return refusal('verify-job-not-known', { job }, 'job');
      case 'working':
        return { state: status.state, ...(status.progress ?? notCountedYet) };
      case 'refused':
        return {
          state: status.state,
          code: status.refusal.code,
          sentence: sentenceOf(status.refusal, language),
        };
      case 'done':
        return { state: 'verified' as const, ...status.outcome };
    }
  },
});
