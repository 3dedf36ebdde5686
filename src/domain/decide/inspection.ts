/** The rules of a documented inspection: starting, answering, signing and breaking it off. */
import type { Answer } from '../answer.ts';
import type { CalendarDate } from '../brand.ts';
import type { Device } from '../device.ts';
import type { DueDate } from '../due/due-date.ts';
import { dueDatesOncePassed } from '../due/due-dates.ts';
import { programReasons } from '../due/program-reasons.ts';
import type { DomainEvent, Occasion } from '../event.ts';
import type { ReleaseRules } from '../held/release-rules.ts';
import { answersOf, type Inspection } from '../inspection.ts';
import type { LengthUnit } from '../length.ts';
import type { ModelSheet } from '../model-sheet.ts';
import type { Person } from '../person.ts';
import { applicableChecks, type DeviceFacts, type Procedure } from '../procedure.ts';
import type { ProgramInForce } from '../program-in-force.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { faultOfAnswer, reasonsWhenBrokenOff, type Verdict, verdictOf, withReasons } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { incompetence } from './designation.ts';
import { brokenOffReturn, evidenceFault } from './held/release.ts';

/** What an inspection is held against: the device, its model sheet, and the written rules of the day it began. */
export interface InspectionCase {
  readonly device: Device;
  readonly modelSheet: ModelSheet;
  readonly procedure: Procedure;
  readonly lengthUnit: LengthUnit;
  readonly inForce: ProgramInForce;
  /** What must exist before a held device passes again. */
  readonly releaseRules: ReleaseRules;
}

/**
 * What the answers and the program come to on a day: a device whose revalidation or service life is over, or whose missed
 * inspection calls for revalidation, does not pass, whatever is found.
 */
export const verdictOfCase = (
  inspection: Inspection,
  { device, modelSheet, procedure, lengthUnit, inForce }: InspectionCase,
  on: CalendarDate,
): Verdict => {
  const found = verdictOf(procedure, answersOf(inspection), factsOf(modelSheet), lengthUnit);
  return withReasons(found, programReasons(device, modelSheet, inForce, on));
};

export const factsOf = (modelSheet: ModelSheet): DeviceFacts => ({
  ratedLengthM: modelSheet.ratedLengthM,
  loadIndicatorFitted: modelSheet.loadIndicatorFitted,
  lifelineDiameterMm: modelSheet.lifelineDiameterMm,
  lifelineMinimumDiameterMm: modelSheet.lifelineMinimumDiameterMm,
});

/** Why nothing can be said of a device that may be elsewhere, or of which it was not said what happened to it. */
export const notBack = ({ benchId, custody, openCheckIn }: Device): Refusal | undefined => {
  if (custody !== undefined) return refusal('inspection-device-out', { benchId, on: custody.since.on });
  return openCheckIn === undefined ? undefined : refusal('inspection-check-in-open', { benchId });
};

/** A device that is recorded out comes back first, with its questions: what happened to it out there is part of what is inspected. */
export const decideStart = (
  device: Device,
  inspection: number,
  procedure: Inspection['procedure'],
): Decision => {
  switch (device.standing) {
    case 'scrapped':
      return refusal('device-scrapped', { benchId: device.benchId });
    case 'at manufacturer':
      return refusal('device-out-of-service', { benchId: device.benchId });
    case 'quarantined':
      if (device.release === undefined) return refusal('device-out-of-service', { benchId: device.benchId });
      break;
    case 'new':
    case 'in service':
  }
  return (
    notBack(device) ??
    (device.openInspection === undefined
      ? [{ type: 'inspection.started', inspection, benchId: device.benchId, procedure }]
      : refusal('inspection-already-open', { inspection: device.openInspection }))
  );
};

export const decideAnswer = (
  inspection: Inspection,
  { device, modelSheet, procedure }: InspectionCase,
  checkKey: string,
  answer: Answer,
): Decision => {
  if (inspection.state !== 'open') return notOpen(inspection);
  const facts = factsOf(modelSheet);
  const check = applicableChecks(procedure, facts).find((candidate) => candidate.key === checkKey);
  if (check === undefined) return refusal('check-unknown', { check: checkKey }, 'check');
  const fault = faultOfAnswer(check, answer, facts);
  if (fault !== undefined) return fault;
  return [
    {
      type: 'inspection.answered',
      inspection: inspection.inspection,
      benchId: device.benchId,
      check: checkKey,
      answer,
    },
  ];
};

/**
 * Signs the verdict. The signer's designation and training are valid on the day and cover this type of device; the signer
 * is not its regular user, and gave every answer in person. Nothing passes that is recorded out, and nothing that was held
 * without the evidence for every reason. The tag number that follows belongs to the tag of this verdict.
 *
 * A blind second inspection changes nothing where it passes: no removal is lifted, no due date moves, the tag that hangs on
 * the device stays. Where it removes, the device is out of service at once, as by any other.
 */
export const decideSign = (
  inspection: Inspection,
  inspected: InspectionCase,
  signer: Person,
  occasion: Occasion,
): Decision => {
  const { device, modelSheet, inForce } = inspected;
  const { program } = inForce;
  if (inspection.state !== 'open') return notOpen(inspection);
  const isBlind = inspection.reinspection !== undefined;
  const unfit = (isBlind ? knowsFirst(device, signer) : undefined) ?? unfitToSign(signer, device, occasion);
  if (unfit !== undefined) return unfit;
  const verdict = verdictOfCase(inspection, inspected, occasion.on);
  if (verdict.kind === 'incomplete') {
    const open = [...verdict.unanswered, ...verdict.lookAgain];
    return refusal('inspection-incomplete', { count: open.length, first: open[0] ?? '' });
  }
  const absent = verdict.kind === 'pass' ? notBack(device) : undefined;
  if (absent !== undefined) return absent;
  if (verdict.kind === 'pass' && device.presumedIdentity !== undefined) {
    return refusal('identity-presumed', {
      benchId: device.benchId,
      identityCase: device.presumedIdentity.identityCase,
    });
  }
  const unreleased = verdict.kind === 'pass' && !isBlind ? returnFault(inspected) : undefined;
  if (unreleased !== undefined) return unreleased;
  const others = Object.values(inspection.answers).filter((answered) => answered.by !== signer.personId);
  if (others.length > 0) return refusal('answers-by-others', { count: others.length });
  const isTagged = !isBlind || verdict.kind !== 'pass';
  const [due] =
    verdict.kind === 'pass' && isTagged ? dueDatesOncePassed(device, modelSheet, program, occasion.on) : [];
  return [
    {
      type: 'inspection.signed',
      inspection: inspection.inspection,
      benchId: device.benchId,
      verdict,
      ...(due === undefined ? {} : { dueOn: due.on, due: dueReason(due) }),
      program: { key: program.key, version: program.version },
      tagNumber: device.lastTagNumber + (isTagged ? 1 : 0),
      ...(inspection.reinspection === undefined ? {} : { reinspection: inspection.reinspection }),
    },
  ];
};

/** Why a device does not pass although nothing was found, or `undefined` where it was not held or may come back. */
const returnFault = ({ device, releaseRules, inForce }: InspectionCase): Refusal | undefined => {
  if (device.standing === 'new' || device.standing === 'in service') return undefined;
  return device.release === undefined
    ? refusal('device-out-of-service', { benchId: device.benchId })
    : evidenceFault(device, { rules: releaseRules, program: inForce.program });
};

const dueReason = ({ what, rule, months }: DueDate): Pick<DueDate, 'what' | 'rule' | 'months'> => ({
  what,
  rule,
  ...(months === undefined ? {} : { months }),
});

/** Why a person may not sign an inspection of this device today, or `undefined` where they may. */
export const unfitToSign = (signer: Person, device: Device, { on }: Occasion): Refusal | undefined =>
  incompetence(signer, on, device) ??
  (device.regularUserId === signer.personId
    ? refusal('signer-is-regular-user', { name: signer.name })
    : undefined);

/** Somebody who knows what the first inspection of a blind pair found cannot make the second. */
export const knowsFirst = ({ reinspection }: Device, { personId, name }: Person): Refusal | undefined =>
  reinspection?.knownTo.includes(personId) === true ? refusal('reinspection-known-to', { name }) : undefined;

/** Breaks the inspection off. What was found until then keeps the device out of service, and so does having been held. */
export const decideBreakOff = (
  inspection: Inspection,
  { device, modelSheet, procedure, lengthUnit }: InspectionCase,
  why: string,
): Decision => {
  if (inspection.state !== 'open') return notOpen(inspection);
  const abandoned: DomainEvent = {
    type: 'inspection.abandoned',
    inspection: inspection.inspection,
    benchId: device.benchId,
    why,
  };
  const found = reasonsWhenBrokenOff(procedure, answersOf(inspection), factsOf(modelSheet), lengthUnit);
  const reasons = device.release === undefined ? found : [brokenOffReturn, ...found];
  return reasons.length === 0
    ? [abandoned]
    : [
        abandoned,
        { type: 'device.removed', benchId: device.benchId, reasons, tagNumber: device.lastTagNumber + 1 },
      ];
};

export const notOpen = (inspection: Inspection): Refusal =>
  refusal('inspection-not-open', { inspection: inspection.inspection, state: inspection.state });
