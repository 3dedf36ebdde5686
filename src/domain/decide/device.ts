/** The rules of the register: a device, its codes, and taking it out of service at once. */
import type { BenchId } from '../brand.ts';
import type { Device, OtherCode } from '../device.ts';
import type { DomainEvent } from '../event.ts';
import { type KnownMarkingEntry, markingElements } from '../marking.ts';
import type { Program } from '../program.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { type Reason, withNote } from '../verdict.ts';
import type { Decision } from './decision.ts';

export interface Registration {
  readonly modelSheetId: string;
  readonly serial: string;
  readonly dateOfManufacture: string;
  readonly marking: readonly KnownMarkingEntry[];
  readonly otherCodes: readonly OtherCode[];
  readonly regularUserId?: string | undefined;
}

/** A code, and what it means at the station already, in words. */
export interface CodeTaken {
  readonly code: string;
  readonly meaning: string;
}

/** What the register already holds that a registration could clash with. */
export interface Clashes {
  readonly benchIdTaken: boolean;
  /** The device with the same model sheet and serial number. */
  readonly sameSerial?: BenchId | undefined;
  /** The first of the registration's codes that means something else already, and what. */
  readonly codeTaken?: CodeTaken | undefined;
  readonly modelSheetKnown: boolean;
}

export const decideRegister = (benchId: BenchId, registration: Registration, clashes: Clashes): Decision => {
  if (!clashes.modelSheetKnown) {
    return refusal('model-sheet-unknown', { modelSheetId: registration.modelSheetId }, 'modelSheetId');
  }
  if (clashes.benchIdTaken) return refusal('bench-id-taken', { benchId }, 'benchId');
  if (clashes.sameSerial !== undefined) {
    return refusal('serial-taken', { serial: registration.serial, benchId: clashes.sameSerial }, 'serial');
  }
  if (clashes.codeTaken !== undefined) return codeTaken(clashes.codeTaken);
  const unanswered = markingElements.filter(
    (element) => registration.marking.filter((entry) => entry.element === element).length !== 1,
  );
  if (unanswered.length > 0)
    return refusal('marking-incomplete', { elements: unanswered.join(', ') }, 'marking');
  const { modelSheetId, serial, dateOfManufacture, marking, otherCodes, regularUserId } = registration;
  return [
    {
      type: 'device.registered',
      benchId,
      modelSheetId,
      serial,
      dateOfManufacture,
      marking: [...marking],
      otherCodes: [...otherCodes],
      ...(regularUserId === undefined ? {} : { regularUserId }),
    },
  ];
};

/** A code means one thing. `meaning` is what it means already, in words, if anything. */
export const decideBindCode = (
  device: Device,
  otherCode: OtherCode,
  meaning: string | undefined,
): Decision => {
  if (device.standing === 'scrapped') return refusal('device-scrapped', { benchId: device.benchId });
  if (meaning !== undefined) return codeTaken({ code: otherCode.code, meaning });
  return [{ type: 'device.code-bound', benchId: device.benchId, otherCode }];
};

/**
 * Takes a device out of service on one of the program's grounds. An open inspection of it is broken off, and what it had
 * `found` until then is kept among the reasons.
 */
export const decideRemove = (
  device: Device,
  program: Program,
  groundKey: string,
  note: string | undefined,
  found: readonly Reason[],
): Decision => {
  if (device.standing === 'scrapped') return refusal('device-scrapped', { benchId: device.benchId });
  const ground = program.removalGrounds.find((candidate) => candidate.key === groundKey);
  if (ground === undefined) {
    return refusal(
      'removal-ground-unknown',
      { ground: groundKey, allowed: program.removalGrounds.map(({ key }) => key).join(', ') },
      'ground',
    );
  }
  if (ground.noteNeeded && (note === undefined || note === '')) return refusal('note-needed', {}, 'note');
  const sentence = withNote(ground.reason, note);
  return removalOf(device, [
    { key: `removal.${ground.key}`, zone: ground.zone, effect: 'remove', sentence },
    ...found,
  ]);
};

/** Takes a device that is not scrapped out of service for these reasons; an open inspection of it is broken off. */
export const removalOf = (
  { benchId, lastTagNumber, openInspection }: Device,
  reasons: readonly Reason[],
): readonly DomainEvent[] => {
  const removed: DomainEvent = {
    type: 'device.removed',
    benchId,
    reasons: [...reasons],
    tagNumber: lastTagNumber + 1,
  };
  return openInspection === undefined
    ? [removed]
    : [
        {
          type: 'inspection.abandoned',
          inspection: openInspection,
          benchId,
          why: reasons[0]?.sentence.en ?? '',
        },
        removed,
      ];
};

const codeTaken = ({ code, meaning }: CodeTaken): Refusal =>
  refusal('code-taken', { code, meaning }, 'otherCodes');
