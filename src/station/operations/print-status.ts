/** `print.status`: how a print job stands. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';

export const printStatus = defineOperation({
  name: 'print.status',
  summary: 'How a print job stands.',
  kind: 'query',
  access: everyRole,
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    z.object({
      state: z.literal('printing'),
      /** What keeps it from coming out at this moment; put it right, and it goes on. */
      problem: z.string().optional(),
    }),
    /** `confirmed` is false where the printer cannot say that it came out. */
    z.object({ state: z.literal('printed'), confirmed: z.boolean(), files: z.array(z.string()) }),
    z.object({ state: z.literal('refused'), code: z.string(), sentence: z.string() }),
  ]),
  run: async ({ printJobs, language }, { job }) => {
    const status = printJobs.stateOf(job);
    switch (status?.state) {
      case undefined:
        return refusal('print-job-not-known', { job }, 'job');
      case 'working': {
        const problem = status.progress?.problem;
        return {
          state: 'printing' as const,
          ...(problem === undefined ? {} : { problem: sentenceOf(problem, language) }),
        };
      }
      case 'done':
        return {
          state: 'printed' as const,
          confirmed: status.outcome.confirmed,
          files: [...(status.outcome.files ?? [])],
        };
      case 'refused':
        return {
          state: status.state,
          code: status.refusal.code,
          sentence: sentenceOf(status.refusal, language),
        };
    }
  },
});
