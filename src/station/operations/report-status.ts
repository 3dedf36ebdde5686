/** `report.status`: how a report stands. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';
import { notCountedYet } from '../work-jobs.ts';

export const reportStatus = defineOperation({
  name: 'report.status',
  summary: 'How a report stands.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ job: z.number().int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Pages; `of` is 0 while it is not known yet. */
    z.object({ state: z.literal('working'), done: z.number().int(), of: z.number().int() }),
    z.object({
      state: z.literal('made'),
      path: z.string(),
      fileName: z.string(),
      pages: z.number().int().optional(),
      rows: z.number().int().optional(),
      opened: z.boolean(),
    }),
    z.object({ state: z.literal('refused'), code: z.string(), sentence: z.string() }),
  ]),
  run: async ({ reportJobs, language }, { job }) => {
    const status = reportJobs.stateOf(job);
    switch (status?.state) {
      case undefined:
        return refusal('report-job-not-known', { job }, 'job');
      case 'working':
        return { state: status.state, ...(status.progress ?? notCountedYet) };
      case 'refused':
        return {
          state: status.state,
          code: status.refusal.code,
          sentence: sentenceOf(status.refusal, language),
        };
      case 'done':
        return { state: 'made' as const, ...status.outcome };
    }
  },
});
