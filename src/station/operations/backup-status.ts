/** `backup.status`: how a backup stands. */
import { z } from 'zod';
import { backupMadeSchema } from '../../domain/keeping.ts';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';
import { notCountedYet } from '../work-jobs.ts';

export const backupStatus = defineOperation({
  name: 'backup.status',
  summary: 'How a backup stands.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.number().int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Files, each written and read again; `of` is 0 while it is not known yet. */
    z.object({ state: z.literal('working'), done: z.number().int(), of: z.number().int() }),
    backupMadeSchema.extend({
      state: z.literal('made'),
      file: z.string(),
      /** Earlier ones that are no longer kept. */
      removed: z.number().int(),
      onSameDisk: z.boolean(),
    }),
    z.object({ state: z.literal('refused'), code: z.string(), sentence: z.string() }),
  ]),
  run: async ({ keeper, language }, { job }) => {
    const status = keeper.backups.stateOf(job);
    switch (status?.state) {
      case undefined:
        return refusal('backup-job-not-known', { job }, 'job');
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
