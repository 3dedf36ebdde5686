/** The people of the station, and the written designation that makes an inspector a competent person. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from './brand.ts';

export const roles = ['user', 'attendant', 'inspector', 'administrator'] as const;
export const roleSchema = z.enum(roles);
export type Role = z.infer<typeof roleSchema>;

/** Source: training and the employer's written designation make the competent person, not a licence (common practice). */
export const designationSchema = z.object({
  designatedBy: z.string().trim().min(1).max(120),
  designatedOn: calendarDateSchema,
  trainingValidUntil: calendarDateSchema,
});
export type Designation = z.infer<typeof designationSchema>;

export const personSchema = z.object({
  personId: z.string(),
  name: z.string().trim().min(1).max(120),
  badge: z.string(),
  roles: z.array(roleSchema).min(1),
  designation: designationSchema.optional(),
});
export type Person = z.infer<typeof personSchema>;

/** What is wrong with a person's designation on a day, or `undefined` where it is valid. */
export const designationFault = (
  person: Person,
  on: CalendarDate,
): 'not designated' | 'not yet designated' | 'training expired' | undefined => {
  const designation = person.designation;
  if (designation === undefined) return 'not designated';
  if (designation.designatedOn > on) return 'not yet designated';
  return designation.trainingValidUntil < on ? 'training expired' : undefined;
};
