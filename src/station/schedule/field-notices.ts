/** Devices that are out in the field and come due there: whom to call, and how urgent it is. */
import { z } from 'zod';
import { addDays } from '../../domain/calendar.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import type { OperationContext } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { type TrainingNoticeView, trainingNotices } from '../training-notices.ts';
import { plannedDeviceSchema, plannedDevices } from './planned-device.ts';

export const fieldNoticeSchema = z.object({
  /**
   * `overdue`: it must not be used any more. `call in`: it is expected back too late for its due date. `due soon`: it comes
   * back in time, but is due within the warning time of the program.
   */
  why: z.enum(['overdue', 'call in', 'due soon']),
  planned: plannedDeviceSchema,
});
export type FieldNotice = z.infer<typeof fieldNoticeSchema>;

export interface Notices {
  /** What is due first comes first. */
  readonly devices: FieldNotice[];
  readonly training: TrainingNoticeView[];
}

export const noticesOf = async (context: OperationContext): Promise<Notices | Refusal> => {
  const found = await context.planner.plan(context);
  if (isRefusal(found)) return found;
  const { plan, today, out } = found;
  return context.ledger.read(async (reader) => {
    const { dueSoonDays } = await programIn(reader, context.rules);
    const soon = addDays(today, dueSoonDays);
    const inspections = [...plan.planned, ...plan.unplanned]
      .filter(({ benchId, dueOn }) => out.has(benchId) && dueOn !== undefined)
      .filter(({ callIn, dueOn = today }) => callIn || dueOn <= soon)
      .sort((one, other) => (one.dueOn ?? '').localeCompare(other.dueOn ?? ''));
    const devices = await plannedDevices(reader, inspections, dueSoonDays, today);
    if (isRefusal(devices)) return devices;
    return {
      devices: devices.map((planned) => ({
        why: planned.kind === 'overdue' ? 'overdue' : planned.callIn ? 'call in' : 'due soon',
        planned,
      })),
      training: trainingNotices(await reader.people(), today),
    };
  });
};
