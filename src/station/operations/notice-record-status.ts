/** `notice.record-status`: how the recording of a manufacturer's notice stands. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';
import { recordedNoticeSchema } from '../recall/record-notice.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

export const noticeRecordStatus = defineOperation({
  name: 'notice.record-status',
  summary: 'How the recording of a manufacturer’s notice stands.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** The register counts twice: as it is held against the notice, and as what is meant is held. */
    workingSchema,
    recordedNoticeSchema.extend({ state: z.literal('recorded') }),
    refusedSchema,
  ]),
  run: async ({ noticeJobs, language }, { job }) =>
    workStatus(noticeJobs, job, language, 'notice-job-not-known', (recorded) => ({
      state: 'recorded' as const,
      ...recorded,
    })),
});
