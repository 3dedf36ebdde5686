/** `notice.preview`: which devices a manufacturer's notice would mean, before anything is recorded. */
import { z } from 'zod';
import { noticeTextSchema } from '../../domain/recall/notice.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { noticeMatches, noticeMatchesSchema } from '../recall/notice-view.ts';

export const noticePreview = defineOperation({
  name: 'notice.preview',
  summary: 'The devices that a manufacturer’s notice would mean.',
  kind: 'query',
  access: everyRole,
  input: z.object({ text: noticeTextSchema }),
  output: noticeMatchesSchema,
  run: (context, { text }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const { dueSoonDays } = await programIn(reader, context.rules);
      const today = context.occasion(station).on;
      return noticeMatches(reader, text, { today, dueSoonDays, language: context.language });
    }),
});
