/** `notice.show`: one notice, and the devices that it means today: which are held, and who has those that are out. */
import { z } from 'zod';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { noticeLine, noticeLineSchema, noticeMatches, noticeMatchesSchema } from '../recall/notice-view.ts';
import { namesOf } from '../views.ts';

export const noticeShow = defineOperation({
  name: 'notice.show',
  summary: 'A manufacturer’s notice, with the devices that it means and where they are.',
  kind: 'query',
  access: everyRole,
  input: z.object({ notice: z.int().positive() }),
  output: z.object({ notice: noticeLineSchema, matches: noticeMatchesSchema }),
  run: (context, { notice: number }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const notice = (await reader.notices()).find((each) => each.notice === number);
      if (notice === undefined) return refusal('notice-unknown', { notice: number }, 'notice');
      const { dueSoonDays } = await programIn(reader, context.rules);
      return {
        notice: noticeLine(notice, await namesOf(reader)),
        matches: await noticeMatches(reader, notice, {
          today: context.occasion(station).on,
          dueSoonDays,
          language: context.language,
          notice: number,
        }),
      };
    }),
});
