/** `notice.read`: what a file says of a manufacturer's notice, for a person to look over; nothing is recorded. */
import { z } from 'zod';
import { noticeTextSchema } from '../../domain/recall/notice.ts';
import { defineOperation, everyRole } from '../operation.ts';

/** 2 MB in base64: more than any notice has. */
const mostBase64 = 2_700_000;

export const noticeRead = defineOperation({
  name: 'notice.read',
  summary: 'Reads a manufacturer’s notice from a JSON or CSV file.',
  kind: 'query',
  access: everyRole,
  input: z.object({ contentBase64: z.base64().max(mostBase64) }),
  output: z.object({ text: noticeTextSchema }),
  run: async (_context, { contentBase64 }) => {
    const { readNoticeFile } = await import('../../intake/notice-file.ts');
    return readNoticeFile(Buffer.from(contentBase64, 'base64'));
  },
});
