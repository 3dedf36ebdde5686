/** When the service life of a device ends, by the sheet of its model. */
import type { CalendarDate } from '../brand.ts';
import { addMonths } from '../calendar.ts';
import type { ModelSheet } from '../model-sheet.ts';
import { firstUseDay, type LifeFacts, manufactureDay } from './counted-from.ts';

/** Absent where the manufacturer states no end. */
export const serviceLifeEnd = (
  facts: LifeFacts,
  { serviceLife }: Pick<ModelSheet, 'serviceLife'>,
): CalendarDate | undefined => {
  if (serviceLife === undefined) return undefined;
  const from = serviceLife.from === 'first use' ? firstUseDay(facts) : manufactureDay(facts);
  return addMonths(from, serviceLife.years * 12);
};
