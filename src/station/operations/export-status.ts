/** `export.status`: how an export stands. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';
import { notCountedYet } from '../work-jobs.ts';

export const exportStatus = defineOperation({
  name: 'export.status',
  summary: 'How an export stands.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.number().int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Events; `of` is 0 while it is not known yet. */
    z.object({ state: z.literal('working'), done: z.number().int(), of: z.number().int() }),
    z.object({
      state: z.literal('exported'),
      folder: z.string(),
      events: z.number().int(),
      rootHash: z.string(),
      files: z.number().int(),
      pictures: z.number().int(),
      picturesLost: z.number().int(),
    }),
    z.object({ state: z.literal('refused'), code: z.string(), sentence: z.string() }),
  ]),
  run: async ({ exportJobs, language }, { job }) => {
    const status = exportJobs.stateOf(job);
    switch (status?.state) {
      case undefined:
        return refusal('export-job-not-known', { job }, 'job');
      case 'working':
        return { state: status.state, ...(status.progress ?? notCountedYet) };
      case 'refused':
        return {
          state: status.state,
          code: status.refusal.code,
          sentence: sentenceOf(status.refusal, language),
        };
      case 'done':
        return { state: 'exported' as const, ...status.outcome };
    }
  },
});
