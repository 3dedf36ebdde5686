/** Training that is to be seen to: it has run out, or will soon. */
import { z } from 'zod';
import type { CalendarDate } from './brand.ts';
import { addDays } from './calendar.ts';
import type { Designee } from './competence.ts';

export const trainingNoticeSchema = z.enum(['expired', 'ends soon']);
export type TrainingNotice = z.infer<typeof trainingNoticeSchema>;

/** How long before its end a training is to be seen to. Common practice, no source. */
export const trainingNoticeDays = 30;

/** Of the training behind the designation that counts now. */
export const trainingNotice = (
  { designation, left }: Designee,
  today: CalendarDate,
): TrainingNotice | undefined => {
  if (designation === undefined || left !== undefined) return undefined;
  const { trainingValidUntil: until } = designation;
  if (until < today) return 'expired';
  return until <= addDays(today, trainingNoticeDays) ? 'ends soon' : undefined;
};
