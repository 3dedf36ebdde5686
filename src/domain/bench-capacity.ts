/** How much the bench can take in hand: hours of each weekday, minutes of an inspection, and the days on which it is closed. */
import { z } from 'zod';
import { calendarDateSchema } from './brand.ts';

export const weekdays = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const;
export type Weekday = (typeof weekdays)[number];

/** Hours of everybody who inspects on such a day together. */
const hours = z.number().min(0).max(240).multipleOf(0.25);

/** Both days belong to it. */
export const closureSchema = z.object({
  from: calendarDateSchema,
  until: calendarDateSchema,
  name: z.string().trim().max(80).optional(),
});
export type Closure = z.infer<typeof closureSchema>;

export const benchCapacitySchema = z.object({
  hours: z.object({
    monday: hours,
    tuesday: hours,
    wednesday: hours,
    thursday: hours,
    friday: hours,
    saturday: hours,
    sunday: hours,
  } satisfies Record<Weekday, typeof hours>),
  /** From fetching a device to putting it back, with the paperwork. */
  minutesPerInspection: z.int().min(5).max(480),
  closures: z.array(closureSchema).max(400),
  /** So many days before it is due a device is taken at the earliest, as long as the bench can keep every due date. */
  mostDaysEarly: z.int().min(0).max(366),
});
export type BenchCapacity = z.infer<typeof benchCapacitySchema>;

/** What is counted with until an administrator sets it. Common practice, no source. */
export const assumedBenchCapacity: BenchCapacity = {
  hours: { monday: 4, tuesday: 4, wednesday: 4, thursday: 4, friday: 4, saturday: 0, sunday: 0 },
  minutesPerInspection: 30,
  closures: [],
  mostDaysEarly: 60,
};

/** How many inspections fit into so many hours, whole ones only. */
export const inspectionsIn = (hoursOfDay: number, { minutesPerInspection }: BenchCapacity): number =>
  Math.floor((hoursOfDay * 60) / minutesPerInspection);

export const hoursOf = (inspections: number, { minutesPerInspection }: BenchCapacity): number =>
  (inspections * minutesPerInspection) / 60;
