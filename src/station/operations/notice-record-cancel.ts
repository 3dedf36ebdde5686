/** `notice.record-cancel`: ends the recording of a manufacturer's notice before it is recorded; nothing of it stays. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const noticeRecordCancel = defineOperation({
  name: 'notice.record-cancel',
  summary: 'Ends the recording of a manufacturer’s notice before it is recorded.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.int().positive() }),
  output: z.object({}),
  run: async ({ noticeJobs }, { job }) =>
    noticeJobs.cancel(job) ? {} : refusal('notice-job-not-known', { job }, 'job'),
});
