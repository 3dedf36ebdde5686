/** What a device card says of its due dates: each thing that it is due for, whose rule gave the date, and what the others say. */
import { z } from 'zod';
import type { CalendarDate } from '../domain/brand.ts';
import { dueDateSchema } from '../domain/due/due-date.ts';
import { dueByEveryRule, dueDatesOf } from '../domain/due/due-dates.ts';
import { programReasons } from '../domain/due/program-reasons.ts';
import { recordedUseSchema } from '../domain/due/type-of-use.ts';
import type { ProgramInForce } from '../domain/program-in-force.ts';
import { revalidationSchema } from '../domain/revalidation.ts';
import { reasonSchema } from '../domain/verdict.ts';
import type { DeviceRow } from '../ledger/ledger.ts';

export const dueViewSchema = z.object({
  /** The earliest first; empty unless it is in service. */
  due: z.array(dueDateSchema),
  /** Every rule that applies, with the date that it would give alone. */
  dueByEveryRule: z.array(dueDateSchema),
  /** Why it cannot pass a documented inspection today, whatever is found. */
  programReasons: z.array(reasonSchema),
  /** What was determined of its use, newest first; `by` is a person's name. */
  uses: z.array(recordedUseSchema),
  revalidation: revalidationSchema.optional(),
});

export const dueView = (
  { device, modelSheet }: DeviceRow,
  today: CalendarDate,
  inForce: ProgramInForce,
  name: (personId: string) => string,
): z.infer<typeof dueViewSchema> => ({
  due: [...dueDatesOf(device, modelSheet, inForce.program)],
  dueByEveryRule: [...dueByEveryRule(device, modelSheet, inForce.program)],
  programReasons: [...programReasons(device, modelSheet, inForce, today)],
  uses: (device.uses ?? []).map((use) => ({ ...use, by: name(use.by) })).toReversed(),
  ...(device.revalidation === undefined ? {} : { revalidation: device.revalidation }),
});
