/** Units and identities that must not be mixed up: numbers and strings that carry their meaning in their type. */
import { z } from 'zod';

/** A length of lifeline or a position along it, in metres (SI); at most 200 m, which no cable SRL reaches. */
export const metresSchema = z.number().min(0).max(200).brand<'Metres'>();
export type Metres = z.infer<typeof metresSchema>;

/** A size on a printed tag or of a wire rope, in millimetres. */
export const millimetresSchema = z.number().min(0).brand<'Millimetres'>();
export type Millimetres = z.infer<typeof millimetresSchema>;

/** A day of the calendar in the station's time zone, ISO 8601 extended (`2026-02-28`). */
export const calendarDateSchema = z.iso.date().brand<'CalendarDate'>();
export type CalendarDate = z.infer<typeof calendarDateSchema>;

/** A moment in UTC, ISO 8601 with milliseconds (`2026-02-28T09:15:00.000Z`). */
export const instantSchema = z.iso.datetime().brand<'Instant'>();
export type Instant = z.infer<typeof instantSchema>;

/** A bench ID in its stored form: ten characters of the bench alphabet, no hyphen, an exact codeword. */
export const benchIdSchema = z
  .string()
  .regex(/^[0-9A-HJKMNP-TV-Z]{10}$/)
  .brand<'BenchId'>();
export type BenchId = z.infer<typeof benchIdSchema>;

export const metres = (value: number): Metres => value as Metres;
export const millimetres = (value: number): Millimetres => value as Millimetres;
export const calendarDate = (text: string): CalendarDate => text as CalendarDate;
export const instant = (text: string): Instant => text as Instant;
