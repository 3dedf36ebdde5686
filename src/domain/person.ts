/** The people of the station, and the written designation that makes an inspector a competent person. */
import { z } from 'zod';
import type { Amendment } from './amendment.ts';
import { type CalendarDate, calendarDateSchema } from './brand.ts';
import type { RecordedPersonEvent } from './person-event.ts';

export const roles = ['user', 'attendant', 'inspector', 'administrator'] as const;
export const roleSchema = z.enum(roles);
export type Role = z.infer<typeof roleSchema>;

/** Source: training and the employer's written designation make the competent person, not a licence (common practice). */
export const designationSchema = z.object({
  designatedBy: z.string().trim().min(1).max(120),
  designatedOn: calendarDateSchema,
  trainingValidUntil: calendarDateSchema,
  /** What names the written document at the employer: a number, a file, a folder. */
  document: z.string().trim().min(1).max(200).optional(),
  /** The course, as its certificate names it. */
  trainingCourse: z.string().trim().min(1).max(200).optional(),
  trainedOn: calendarDateSchema.optional(),
  /** The model sheets that the person may inspect; absent for every type of device. */
  scope: z.array(z.string()).min(1).max(500).optional(),
});
export type Designation = z.infer<typeof designationSchema>;

export const personSchema = z.object({
  personId: z.string(),
  name: z.string().trim().min(1).max(120),
  badge: z.string(),
  roles: z.array(roleSchema).min(1),
  /** The one that counts now. */
  designation: designationSchema.optional(),
});

export interface Person extends z.infer<typeof personSchema> {
  /** Since when the person works here no more; absent while they do. */
  readonly left?: { readonly on: CalendarDate; readonly because: string } | undefined;
  /** Corrections of the name, oldest first. */
  readonly amendments?: readonly Amendment[] | undefined;
  /** Everything that was recorded about the person, oldest first. */
  readonly history?: readonly RecordedPersonEvent[] | undefined;
}

export const isAdministrator = ({ roles: held, left }: Person): boolean =>
  left === undefined && held.includes('administrator');
