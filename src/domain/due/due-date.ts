/** A date on which a device stops being fit for use, what for, and whose rule gave it. */
import { z } from 'zod';
import { calendarDateSchema } from '../brand.ts';
import { sourceSchema } from '../procedure.ts';

export const dueWhatSchema = z.enum(['documented inspection', 'revalidation', 'service life']);
export type DueWhat = z.infer<typeof dueWhatSchema>;

/** `tag`: the date that the status tag on the device says, which no laxer rule moves. */
export const dueRuleSchema = z.enum(['standard', 'employer', 'jurisdiction', 'manufacturer', 'tag']);
export type DueRule = z.infer<typeof dueRuleSchema>;

export const dueDateSchema = z.object({
  what: dueWhatSchema,
  /** Still in time on the day itself. */
  on: calendarDateSchema,
  rule: dueRuleSchema,
  /** The interval, counted from `countedFrom`. */
  months: z.int().positive().optional(),
  countedFrom: calendarDateSchema.optional(),
  /** Absent for the date on the tag. */
  source: sourceSchema.optional(),
});
export type DueDate = z.infer<typeof dueDateSchema>;
