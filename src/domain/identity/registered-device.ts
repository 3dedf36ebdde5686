/** What the register knows of a device that helps to tell it from the others. */
import type { BenchId } from '../brand.ts';
import type { Standing } from '../device.ts';

export interface RegisteredDevice {
  readonly benchId: BenchId;
  readonly modelSheetId: string;
  /** Empty where it could not be read at registration. */
  readonly serial: string;
  readonly dateOfManufacture: string;
  readonly standing: Standing;
  readonly regularUserId?: string | undefined;
  /** The newest tag that was made out for it; 0 where there was none. */
  readonly tagNumber: number;
}

/** The year of manufacture, and the month as two digits where the date is written `2018-06…`. */
export const manufacturedIn = (
  dateOfManufacture: string,
): { readonly year: string; readonly month?: string } | undefined => {
  const found = /(?<!\d)(?<year>(?:19|20)\d\d)(?:-(?<month>0[1-9]|1[0-2]))?(?!\d)/.exec(dateOfManufacture);
  const year = found?.groups?.year;
  const month = found?.groups?.month;
  if (year === undefined) return undefined;
  return month === undefined ? { year } : { year, month };
};
