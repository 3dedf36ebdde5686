/** Whose training as a competent person has run out, or will soon. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from '../domain/brand.ts';
import type { Person } from '../domain/person.ts';
import { trainingNotice, trainingNoticeSchema } from '../domain/training-notice.ts';

export const trainingNoticeViewSchema = z.object({
  personId: z.string(),
  name: z.string(),
  notice: trainingNoticeSchema,
  on: calendarDateSchema,
});
export type TrainingNoticeView = z.infer<typeof trainingNoticeViewSchema>;

/** The earliest first. */
export const trainingNotices = (people: readonly Person[], today: CalendarDate): TrainingNoticeView[] =>
  people
    .flatMap((person) => {
      const notice = trainingNotice(person, today);
      const on = person.designation?.trainingValidUntil;
      const { personId, name } = person;
      return notice === undefined || on === undefined ? [] : [{ personId, name, notice, on }];
    })
    .toSorted((one, other) => one.on.localeCompare(other.on));
