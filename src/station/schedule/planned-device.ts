/** A device of the plan as the lists show it: which it is, when its inspection is planned, and where it may be. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { dueWhatSchema } from '../../domain/due/due-date.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { PlannedInspection, UnplannedInspection } from '../../planning/bench-plan.ts';
import { deviceIn } from '../lookup.ts';
import { deviceSummary, deviceSummarySchema, namesOf } from '../views.ts';

export const plannedDeviceSchema = z.object({
  device: deviceSummarySchema,
  kind: z.enum(['overdue', 'due', 'never inspected']),
  /** The day at the bench; absent where there is no room for it. */
  on: calendarDateSchema.optional(),
  /** Days of the interval that are lost. */
  daysEarly: z.int(),
  /** What the device is due for; absent where it was never inspected. */
  dueWhat: dueWhatSchema.optional(),
  /** It is out and does not come back in time by itself. */
  callIn: z.boolean(),
  /** The name of who has it; absent where it is in store. */
  holder: z.string().optional(),
  /** When it is expected back. */
  outUntil: calendarDateSchema.optional(),
  /** The code of its place in store, where it is known to have one. */
  place: z.string().optional(),
  /** The name of its regular user. */
  regularUser: z.string().optional(),
});
export type PlannedDevice = z.infer<typeof plannedDeviceSchema>;

export const plannedDevices = async (
  reader: LedgerReader,
  inspections: readonly (PlannedInspection | UnplannedInspection)[],
  dueSoonDays: number,
  today: z.infer<typeof calendarDateSchema>,
): Promise<PlannedDevice[] | Refusal> => {
  const nameOf = await namesOf(reader);
  const found: PlannedDevice[] = [];
  for (const inspection of inspections) {
    const row = await deviceIn(reader, inspection.benchId);
    if (isRefusal(row)) return row;
    const { regularUserId, dueWhat, custody, stored } = row.device;
    found.push({
      device: deviceSummary(row, today, dueSoonDays),
      kind: inspection.kind,
      ...('on' in inspection ? { on: inspection.on } : {}),
      daysEarly: 'daysEarly' in inspection ? inspection.daysEarly : 0,
      ...(dueWhat === undefined ? {} : { dueWhat }),
      callIn: inspection.callIn,
      ...(custody === undefined ? {} : { holder: nameOf(custody.userId) }),
      ...(custody?.expectedOn === undefined ? {} : { outUntil: custody.expectedOn }),
      ...(stored === undefined ? {} : { place: stored.place }),
      ...(regularUserId === undefined ? {} : { regularUser: nameOf(regularUserId) }),
    });
  }
  return found;
};
