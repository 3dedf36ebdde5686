/** `notice.record`: a manufacturer's notice, signed with a PIN; what it means is held at once, wherever it is. */
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import {
  noticeSignatureFault,
  recordedNoticeSchema,
  recordNotice,
  signedNoticeSchema,
} from '../recall/record-notice.ts';

export const noticeRecord = defineOperation({
  name: 'notice.record',
  summary: 'Records a manufacturer’s notice and holds every device that it means, signed with a PIN.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: signedNoticeSchema,
  output: recordedNoticeSchema,
  run: async (context, { text, pin }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const fault = await noticeSignatureFault(context, person, pin);
    if (fault !== undefined) return fault;
    return recordNotice(context, person, text, {
      signal: new AbortController().signal,
      onProgress: () => undefined,
    });
  },
});
