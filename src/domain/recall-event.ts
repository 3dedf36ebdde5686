/** What can happen with the manufacturers' notices. */
import { z } from 'zod';
import { benchIdSchema } from './brand.ts';
import { event } from './event-shape.ts';
import { noticeTextSchema } from './recall/notice.ts';
import { recallMatchSchema } from './recall/recall-match.ts';

export const recallEvents = [
  /** The removal of each device that it means follows in the same breath. */
  event('notice.recorded', {
    notice: z.int().positive(),
    text: noticeTextSchema,
    /** The devices of the register that it meant that day, certainly or possibly. */
    matched: z.array(z.object({ benchId: benchIdSchema, match: recallMatchSchema })),
  }),
] as const;
