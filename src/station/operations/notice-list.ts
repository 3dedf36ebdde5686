/** `notice.list`: the manufacturers' notices that were recorded, the latest first. */
import { z } from 'zod';
import { defineOperation, everyRole } from '../operation.ts';
import { noticeLine, noticeLineSchema } from '../recall/notice-view.ts';
import { namesOf } from '../views.ts';

export const noticeList = defineOperation({
  name: 'notice.list',
  summary: 'The manufacturers’ notices that were recorded.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({ notices: z.array(noticeLineSchema) }),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const name = await namesOf(reader);
      return { notices: (await reader.notices()).map((notice) => noticeLine(notice, name)) };
    }),
});
