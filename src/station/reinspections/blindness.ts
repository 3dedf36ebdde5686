/** Keeps what the first inspection of a blind pair found from whoever may yet make the second. */
import type { CalendarDate } from '../../domain/brand.ts';
import type { Device } from '../../domain/device.ts';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { isBlindTo } from '../../domain/reinspection/reinspection.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { OperationContext } from '../operation.ts';

type Who = Pick<OperationContext, 'person' | 'occasion'>;

/** The first inspection of the pair that a device waits for, where the person of the session must not see it. */
export const hiddenInspection = async (
  reader: LedgerReader,
  device: Device,
  who: Who,
): Promise<number | undefined> => {
  if (device.reinspection === undefined) return undefined;
  const today = await todayIn(reader, who);
  return today !== undefined && isBlindTo(device, who.person, today) ? device.reinspection.first : undefined;
};

/** The refusal to show an inspection, or anything that tells what it found, where it is hidden from the person. */
export const blindFault = async (
  reader: LedgerReader,
  device: Device,
  who: Who,
  inspection?: number,
): Promise<Refusal | undefined> => {
  const hidden = await hiddenInspection(reader, device, who);
  return hidden === undefined || (inspection !== undefined && inspection !== hidden)
    ? undefined
    : refusal('reinspection-blind', { benchId: device.benchId });
};

const todayIn = async (reader: LedgerReader, who: Who): Promise<CalendarDate | undefined> => {
  const station = await reader.station();
  return station && who.occasion(station).on;
};
