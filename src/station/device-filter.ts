/** How the register is searched and filtered, for the list on the screen and for reports of it. */
import { z } from 'zod';
import type { CalendarDate } from '../domain/brand.ts';
import { addDays } from '../domain/calendar.ts';
import { standingSchema } from '../domain/device.ts';
import type { DeviceQuery } from '../ledger/ledger.ts';

export const deviceFilterSchema = z.object({
  /** Words that must all occur in bench ID, maker, model, serial number or an other code. */
  search: z.string().trim().max(200).optional(),
  standing: z.array(standingSchema).optional(),
  due: z.enum(['overdue', 'due soon']).optional(),
  /** Only devices whose tag nobody has scanned on them yet. */
  unprovedTag: z.boolean().optional(),
  /** Only devices that somebody has; `overdue` for those that were expected back before today. */
  out: z.enum(['any', 'overdue']).optional(),
  /** Only devices that can go out as far as standing, due date and custody say: in service, not overdue, in store. */
  ready: z.boolean().optional(),
});
export type DeviceFilter = z.output<typeof deviceFilterSchema>;

export const deviceQueryOf = (
  { search, standing, due, unprovedTag, out, ready }: DeviceFilter,
  today: CalendarDate,
  dueSoonDays: number,
): Omit<DeviceQuery, 'limit' | 'offset'> => ({
  search,
  standing,
  dueBefore: due === 'overdue' ? today : due === 'due soon' ? addDays(today, dueSoonDays + 1) : undefined,
  dueFrom: due === 'due soon' || ready === true ? today : undefined,
  unprovedTag,
  out: out === 'any' ? true : ready === true ? false : undefined,
  returnBefore: out === 'overdue' ? today : undefined,
});
