/** The rules of corrections: what may be corrected, by whom, and when the device must be out of service first. */
import type { WantedCorrection } from '../amendment.ts';
import { competenceOn, isCompetentOn } from '../competence.ts';
import type { Device } from '../device.ts';
import { dueDatesOncePassed } from '../due/due-dates.ts';
import type { DomainEvent, Occasion } from '../event.ts';
import { answersOf, type Inspection } from '../inspection.ts';
import type { ModelSheet } from '../model-sheet.ts';
import { isAdministrator, type Person } from '../person.ts';
import { applicableChecks } from '../procedure.ts';
import type { Program } from '../program.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { faultOfAnswer, verdictOf } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { factsOf, type InspectionCase } from './inspection.ts';

/** Who corrects, why, and whether they read the marking on the device just now. */
export interface Amending {
  /** Number of the event that is corrected. */
  readonly amends: number;
  readonly person: Person;
  readonly because: string;
  readonly markingReadNow: boolean;
  readonly occasion: Occasion;
}

type Wanted<Field extends WantedCorrection['field']> = Extract<WantedCorrection, { field: Field }>;
export type DeviceField = 'serial' | 'dateOfManufacture' | 'modelSheet' | 'regularUser';

/** What a correction of a device is held against. */
export interface AmendedDevice {
  readonly device: Device;
  readonly modelSheet: ModelSheet;
  readonly program: Program;
  /** Another device of the model with the serial number that is wanted. */
  readonly sameSerial?: Device['benchId'] | undefined;
  /** The model sheet that is wanted, where it is known. */
  readonly wantedSheet?: ModelSheet | undefined;
  /** The person who is wanted as the regular user, where they are known. */
  readonly wantedUser?: Person | undefined;
  /** Who signed the latest inspection. */
  readonly signer?: Person | undefined;
}

export const mayAmend = (person: Person, { on }: Occasion): Refusal | undefined =>
  isAdministrator(person) || isCompetentOn(person, on)
    ? undefined
    : refusal('amend-not-entitled', { name: person.name });

/**
 * Corrects what was entered of a device. While it is in service, what identifies it is corrected only by somebody who reads
 * the marking on it now, and only where its latest inspection still holds for what is said then; else it goes out of
 * service first.
 */
export const decideAmendDevice = (
  wanted: Wanted<DeviceField>,
  amended: AmendedDevice,
  amending: Amending,
): Decision => {
  const { device } = amended;
  const unfit = mayAmend(amending.person, amending.occasion);
  if (unfit !== undefined) return unfit;
  const was = deviceValue(device, wanted.field);
  if (was === wanted.now) return refusal('amend-nothing-changed', {}, 'correction.now');
  const fault = faultOf(wanted, amended);
  if (fault !== undefined) return fault;
  if (wanted.field !== 'regularUser' && device.standing === 'in service' && !amending.markingReadNow)
    return refusal('amend-reading-needed', { benchId: device.benchId }, 'markingReadNow');
  const correction = was === undefined ? wanted : { ...wanted, was };
  return [event(correction as Amended['correction'], amending, { benchId: device.benchId })];
};

export const deviceValue = (device: Device, field: DeviceField): string | undefined => {
  switch (field) {
    case 'serial':
      return device.serial;
    case 'dateOfManufacture':
      return device.dateOfManufacture;
    case 'modelSheet':
      return device.modelSheetId;
    case 'regularUser':
      return device.regularUserId;
  }
};

const faultOf = (wanted: Wanted<DeviceField>, amended: AmendedDevice): Refusal | undefined => {
  switch (wanted.field) {
    case 'dateOfManufacture':
      return undefined;
    case 'serial':
      return amended.sameSerial === undefined
        ? undefined
        : refusal('serial-taken', { serial: wanted.now, benchId: amended.sameSerial }, 'correction.now');
    case 'regularUser':
      return faultOfUser(wanted, amended);
    case 'modelSheet':
      return faultOfSheet(wanted, amended);
  }
};

/** The competent person of an inspection is not the regular user (ANSI/ASSP Z359.2 / Z359.14 practice, from memory). */
const faultOfUser = (
  { now }: Wanted<'regularUser'>,
  { device, wantedUser }: AmendedDevice,
): Refusal | undefined => {
  if (now === undefined) return undefined;
  if (wantedUser === undefined) return refusal('person-unknown', { personId: now }, 'correction.now');
  return device.standing === 'in service' && device.lastInspection?.by === now
    ? refusal('amend-user-signed', { name: wantedUser.name, benchId: device.benchId }, 'correction.now')
    : undefined;
};

/** In service the latest inspection must hold for the other model too: its length, indicator, interval and signer. */
const faultOfSheet = (
  { now }: Wanted<'modelSheet'>,
  { device, modelSheet, program, wantedSheet, signer, sameSerial }: AmendedDevice,
): Refusal | undefined => {
  const { benchId, lastInspection } = device;
  if (wantedSheet === undefined)
    return refusal('model-sheet-unknown', { modelSheetId: now }, 'correction.now');
  if (sameSerial !== undefined)
    return refusal('serial-taken', { serial: device.serial, benchId: sameSerial }, 'correction.now');
  if (device.openInspection !== undefined)
    return refusal('inspection-already-open', { inspection: device.openInspection });
  if (device.standing !== 'in service') return undefined;
  const holds =
    lastInspection !== undefined &&
    signer !== undefined &&
    wantedSheet.ratedLengthM === modelSheet.ratedLengthM &&
    wantedSheet.loadIndicatorFitted === modelSheet.loadIndicatorFitted &&
    dueDatesOncePassed(device, wantedSheet, program, lastInspection.on)[0].on >=
      (device.dueOn ?? lastInspection.on) &&
    competenceOn(signer, lastInspection.on, { modelSheetId: now }).ground === 'designated';
  return holds ? undefined : refusal('amend-inspection-does-not-hold', { benchId }, 'correction.now');
};

/**
 * Corrects an answer of a signed inspection; the verdict stays as it was signed. A device that is in service on the strength
 * of that inspection goes out of service first where the answer would have removed it.
 */
export const decideAmendAnswer = (
  wanted: Wanted<'answer'>,
  check: string,
  inspection: Inspection,
  { device, modelSheet, procedure, lengthUnit }: InspectionCase,
  amending: Amending,
): Decision => {
  const { person, occasion } = amending;
  const { benchId } = device;
  const number = inspection.inspection;
  if (inspection.state !== 'signed') return refusal('amend-not-signed', { inspection: number });
  const isSigner = inspection.signed?.by === person.personId;
  if (!isSigner && competenceOn(person, occasion.on, device).ground !== 'designated')
    return refusal('amend-answer-not-entitled', { name: person.name });
  const facts = factsOf(modelSheet);
  const asked = applicableChecks(procedure, facts).find(({ key }) => key === check);
  const was = inspection.answers[check]?.answer;
  if (asked === undefined || was === undefined) return refusal('check-unknown', { check }, 'correction');
  const fault = faultOfAnswer(asked, wanted.now, facts);
  if (fault !== undefined) return fault;
  if (isSame(was, wanted.now)) return refusal('amend-nothing-changed', {}, 'correction.now');
  const verdict = verdictOf(procedure, { ...answersOf(inspection), [check]: wanted.now }, facts, lengthUnit);
  const restsOnIt = device.standing === 'in service' && device.lastInspection?.inspection === number;
  if (restsOnIt && verdict.kind !== 'pass') return refusal('amend-remove-first', { benchId });
  return [event({ field: 'answer', check, was, now: wanted.now }, amending, { benchId, inspection: number })];
};

/** A name that was entered wrongly; a name that changed is recorded as a change. */
export const decideAmendName = ({ now }: Wanted<'name'>, corrected: Person, amending: Amending): Decision => {
  const { person } = amending;
  if (!isAdministrator(person)) return refusal('role-needed', { roles: 'administrator' });
  const { personId, name } = corrected;
  return name === now
    ? refusal('amend-nothing-changed', {}, 'correction.now')
    : [event({ field: 'name', was: name, now }, amending, { personId })];
};

type Amended = Extract<DomainEvent, { type: 'record.amended' }>;

const event = (
  correction: Amended['correction'],
  { amends, because, markingReadNow }: Amending,
  about: Pick<Amended, 'benchId' | 'inspection' | 'personId'>,
): DomainEvent => ({
  type: 'record.amended',
  amends,
  ...about,
  correction,
  because,
  ...(markingReadNow ? { markingReadNow } : {}),
});

const isSame = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);
