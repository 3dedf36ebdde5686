/** The employer's written rules, as versioned data (`assets/programs/`). They may be stricter than the trade, never weaker. */
import { z } from 'zod';
import type { CalendarDate } from './brand.ts';
import { addMonths } from './calendar.ts';
import { languageSchema, messageSchema } from './message.ts';
import { sourceSchema, zoneSchema } from './procedure.ts';

export const programSchema = z.object({
  key: z.string(),
  version: z.number().int().positive(),
  title: messageSchema,
  inspectionInterval: z.object({ months: z.number().int().min(1).max(12), source: sourceSchema }),
  /** A due date this many days ahead is shown as due soon. */
  dueSoonDays: z.number().int().min(1),
  tagLanguages: z.array(languageSchema).min(1),
  /** Where a removed device is kept until its case is closed. */
  quarantinePlace: messageSchema,
  /** The grounds on which anyone takes a device out of service at once, without an inspection. */
  removalGrounds: z.array(
    z.object({
      key: z.string(),
      zone: zoneSchema,
      label: messageSchema,
      reason: messageSchema,
      noteNeeded: z.boolean().default(false),
    }),
  ),
  /** What must exist before a removed device can be inspected for return, whatever the reason. */
  beforeReturn: z.array(messageSchema).min(1),
});
export type Program = z.infer<typeof programSchema>;

export interface NextDue {
  readonly dueOn: CalendarDate;
  /** Whose interval was the shortest. */
  readonly rule: 'program' | 'manufacturer';
  readonly months: number;
}

/** The next documented inspection: the shortest interval of the program and the manufacturer wins. */
export const nextDue = (
  inspectedOn: CalendarDate,
  program: Program,
  manufacturerIntervalMonths: number | undefined,
): NextDue => {
  const own = program.inspectionInterval.months;
  const strictest =
    manufacturerIntervalMonths !== undefined && manufacturerIntervalMonths < own
      ? ({ rule: 'manufacturer', months: manufacturerIntervalMonths } as const)
      : ({ rule: 'program', months: own } as const);
  return { dueOn: addMonths(inspectedOn, strictest.months), ...strictest };
};
