/** The rules of what a competent person determines of a device besides its inspections: its type of use, and its revalidation. */
import type { CalendarDate } from '../brand.ts';
import type { Device } from '../device.ts';
import { currentUse, type TypeOfUse } from '../due/type-of-use.ts';
import { isCertainlyBefore, knownDateSchema } from '../equipment-facts.ts';
import type { Person } from '../person.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Revalidation } from '../revalidation.ts';
import type { Decision } from './decision.ts';
import { incompetence } from './designation.ts';

/** The type of use is determined by a competent person (ANSI/ASSP Z359.14, notes to Appendix A, from memory). */
export const decideSetUse = (
  device: Device,
  { typeOfUse, from }: { readonly typeOfUse: TypeOfUse; readonly from: CalendarDate },
  person: Person,
  on: CalendarDate,
): Decision => {
  const { benchId, standing, uses } = device;
  const unfit = incompetence(person, on, device);
  if (unfit !== undefined) return unfit;
  if (standing === 'scrapped') return refusal('device-scrapped', { benchId });
  const fault = dayFault(device, from, on, 'from');
  if (fault !== undefined) return fault;
  const use = currentUse(uses);
  return use?.typeOfUse === typeOfUse && use.from === from
    ? []
    : [{ type: 'device.use-set', benchId, typeOfUse, from }];
};

/** Records what the certificate says. A device that is out of service stays out: this brings none back. */
export const decideRecordRevalidation = (
  device: Device,
  revalidation: Revalidation,
  person: Person,
  on: CalendarDate,
): Decision => {
  const { benchId, standing } = device;
  const unfit = incompetence(person, on, device);
  if (unfit !== undefined) return unfit;
  if (standing === 'scrapped') return refusal('device-scrapped', { benchId });
  const { revalidatedOn, revalidatedBy, certificate } = revalidation;
  const fault = dayFault(device, revalidatedOn, on, 'revalidatedOn');
  if (fault !== undefined) return fault;
  const known = device.revalidation;
  return known?.revalidatedOn === revalidatedOn &&
    known.revalidatedBy === revalidatedBy &&
    known.certificate === certificate
    ? []
    : [{ type: 'device.revalidation-recorded', benchId, ...revalidation }];
};

/** Nothing of a device is still to come, and nothing was before it was made. */
const dayFault = (
  { dateOfManufacture }: Device,
  day: CalendarDate,
  on: CalendarDate,
  field: string,
): Refusal | undefined => {
  if (day > on) return refusal('fact-to-come', { text: day }, field);
  const made = knownDateSchema.safeParse(dateOfManufacture).data;
  return made !== undefined && isCertainlyBefore(day, made)
    ? refusal('fact-before-made', { text: day, made }, field)
    : undefined;
};
