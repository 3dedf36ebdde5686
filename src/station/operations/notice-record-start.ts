/** `notice.record-start`: begins to record a manufacturer's notice, which takes its time where it means many devices. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { noticeSignatureFault, recordNotice, signedNoticeSchema } from '../recall/record-notice.ts';

export const noticeRecordStart = defineOperation({
  name: 'notice.record-start',
  summary:
    'Begins to record a manufacturer’s notice and to hold every device that it means, signed with a PIN.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: signedNoticeSchema,
  /** Ask `notice.record-status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, { text, pin }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const fault = await noticeSignatureFault(context, person, pin);
    if (fault !== undefined) return fault;
    return { job: context.noticeJobs.start((control) => recordNotice(context, person, text, control)) };
  },
});
