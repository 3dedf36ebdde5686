/** `schedule.notices`: devices out in the field that come due, and training that runs out. */
import { z } from 'zod';
import { defineOperation, everyRole } from '../operation.ts';
import { fieldNoticeSchema, noticesOf } from '../schedule/field-notices.ts';
import { trainingNoticeViewSchema } from '../training-notices.ts';

export const scheduleNotices = defineOperation({
  name: 'schedule.notices',
  summary: 'Devices out in the field that come due, and whose training runs out.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    devices: z.array(fieldNoticeSchema),
    training: z.array(trainingNoticeViewSchema),
  }),
  run: (context) => noticesOf(context),
});
