/** Whether the person at the window may yet make the blind second inspection of a device. */
import { calendarDate } from '../../../src/domain/brand.ts';
import { isBlindTo } from '../../../src/domain/reinspection/reinspection.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { useReadyStation } from '../../station/status.ts';

export const useBlindTo = (): ((device: DeviceSummary) => boolean) => {
  const station = useReadyStation();
  return (device) => isBlindTo(device, station?.person, calendarDate(station?.today ?? ''));
};
