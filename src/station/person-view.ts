/** What the screens are shown of a person, and how it is made from the record. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from '../domain/brand.ts';
import { designationsOf, heldDesignationSchema, isCompetentOn } from '../domain/competence.ts';
import { type Person, personSchema } from '../domain/person.ts';
import { personEventSchema } from '../domain/person-event.ts';
import { trainingNotice, trainingNoticeSchema } from '../domain/training-notice.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { amendmentViewSchema, amendmentViews } from './amendment-view.ts';
import { namesOf } from './views.ts';

export const personViewSchema = personSchema.extend({
  /** Designated in writing, with training valid today, for some type of device at least. */
  maySign: z.boolean(),
  /** The training behind the designation has run out, or will within 30 days. */
  trainingNotice: trainingNoticeSchema.optional(),
  pinSet: z.boolean(),
  left: z.object({ on: calendarDateSchema, because: z.string() }).optional(),
});
export type PersonView = z.infer<typeof personViewSchema>;

export const personView = async (
  reader: LedgerReader,
  person: Person,
  today: CalendarDate,
): Promise<PersonView> => {
  const { history: _history, amendments: _amendments, ...now } = person;
  const notice = trainingNotice(person, today);
  return {
    ...now,
    maySign: isCompetentOn(person, today),
    ...(notice === undefined ? {} : { trainingNotice: notice }),
    pinSet: (await reader.credential(person.personId)) !== undefined,
  };
};

/** The life of a person at the station; whoever did something is named. */
export const personRecordSchema = z.object({
  person: personViewSchema,
  /** Newest first. */
  designations: z.array(heldDesignationSchema),
  /** Corrections of the name, newest first. */
  amendments: z.array(amendmentViewSchema),
  /** Newest first. */
  history: z.array(
    z.object({
      seq: z.int(),
      on: calendarDateSchema,
      by: z.string(),
      byThemselves: z.boolean(),
      event: personEventSchema,
    }),
  ),
});
export type PersonRecord = z.infer<typeof personRecordSchema>;

export const personRecord = async (
  reader: LedgerReader,
  person: Person,
  today: CalendarDate,
): Promise<PersonRecord> => {
  const name = await namesOf(reader);
  const named = <Done extends { readonly by: string }>(done: Done): Done => ({ ...done, by: name(done.by) });
  return {
    person: await personView(reader, person, today),
    designations: designationsOf(person)
      .map(({ designation, recorded, ended }) => ({
        designation,
        ...(recorded === undefined ? {} : { recorded: named(recorded) }),
        ...(ended === undefined ? {} : { ended: named(ended) }),
      }))
      .toReversed(),
    amendments: (await amendmentViews(reader, person.amendments ?? [])).toReversed(),
    history: (person.history ?? [])
      .map((entry) => ({ ...named(entry), byThemselves: entry.by === person.personId }))
      .toReversed(),
  };
};
