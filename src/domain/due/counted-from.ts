/** The days from which intervals are counted, always the earliest that the record allows. */
import { type CalendarDate, calendarDate } from '../brand.ts';
import type { Device } from '../device.ts';
import { knownDateSchema } from '../equipment-facts.ts';

/** What the record of a device says of its life; the dates may be known to the year or the month only. */
export type LifeFacts = Pick<
  Device,
  'dateOfManufacture' | 'purchasedOn' | 'firstUsedOn' | 'registeredOn' | 'revalidation'
>;

/** The first day that a date may stand for: `2021` is 2021-01-01. Absent where the text is no date. */
export const earliestDay = (text: string | undefined): CalendarDate | undefined => {
  const known = knownDateSchema.safeParse(text);
  return known.success ? calendarDate(`${known.data}-01-01`.slice(0, 10)) : undefined;
};

const earliestOf = (days: readonly (CalendarDate | undefined)[]): CalendarDate | undefined =>
  days.filter((day) => day !== undefined).sort()[0];

/** Manufacture or purchase, whichever is earlier; where neither is known, the day on which the device was registered. */
export const manufactureDay = (facts: LifeFacts): CalendarDate =>
  earliestOf([earliestDay(facts.dateOfManufacture), earliestDay(facts.purchasedOn)]) ?? facts.registeredOn;

/** First put into use; where that is not known, manufacture or purchase, which is stricter. */
export const firstUseDay = (facts: LifeFacts): CalendarDate =>
  earliestDay(facts.firstUsedOn) ?? manufactureDay(facts);

/** The last revalidation by the manufacturer, else first use. */
export const revalidatedDay = (facts: LifeFacts): CalendarDate =>
  facts.revalidation?.revalidatedOn ?? firstUseDay(facts);
