/** The rules of taking a device of a list into the register: what was not read on it does not count, and when in doubt it is out of service. */
import type { BenchId, CalendarDate } from '../brand.ts';
import { competenceOn } from '../competence.ts';
import type { DeclaredInspection } from '../declared-inspection.ts';
import type { OtherCode } from '../device.ts';
import type { DomainEvent } from '../event.ts';
import type { PlannedDevice } from '../fleet-import/plan-fleet.ts';
import { lengthText } from '../length.ts';
import { type KnownMarkingEntry, type MarkingElement, markingElements } from '../marking.ts';
import type { Message } from '../message.ts';
import type { Person } from '../person.ts';
import { isRefusal, type Refusal, refusal } from '../refusal.ts';
import { type Reason, withNote } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { type Clashes, decideRegister } from './device.ts';

export interface Importer {
  readonly person: Person;
  readonly on: CalendarDate;
}

export interface ImportSource {
  readonly fileName: string;
  readonly sha256: string;
  /** Why a device that the list says is out of service stays so. */
  readonly removalReason: Message;
}

/**
 * A device of a list is new: never inspected here. No element of its marking counts as legible, for nobody has read it on
 * the device; the first documented inspection asks for every one. What the list says of an inspection is declared, not ours.
 */
export const decideImportDevice = (
  benchId: BenchId,
  device: PlannedDevice,
  otherCodes: readonly OtherCode[],
  { fileName, sha256, removalReason }: ImportSource,
  clashes: Clashes,
  importer: Importer,
): Decision => {
  const unfit = unfitToDetermine(device, importer);
  if (unfit !== undefined) return unfit;
  const { modelSheet, serial, dateOfManufacture, regularUserId, inspection, isRemoved, row } = device;
  const registered = decideRegister(
    benchId,
    {
      modelSheetId: modelSheet.modelSheetId,
      serial,
      dateOfManufacture,
      marking: markingElements.map((element) => declaredElement(element, device)),
      otherCodes,
      regularUserId,
    },
    clashes,
  );
  if (isRefusal(registered)) return registered;
  const source: DeclaredInspection['source'] = { fileName, sha256, row };
  const declared: readonly DomainEvent[] =
    inspection === undefined ? [] : [{ type: 'inspection.declared', benchId, ...inspection, source }];
  const { purchasedOn, firstUsedOn, place } = device;
  const facts: readonly DomainEvent[] =
    purchasedOn === undefined && firstUsedOn === undefined
      ? []
      : [
          {
            type: 'device.facts-recorded',
            benchId,
            ...(purchasedOn === undefined ? {} : { purchasedOn }),
            ...(firstUsedOn === undefined ? {} : { firstUsedOn }),
          },
        ];
  const uses: readonly DomainEvent[] =
    device.typeOfUse === undefined
      ? []
      : [{ type: 'device.use-set', benchId, typeOfUse: device.typeOfUse, from: importer.on }];
  const stored: readonly DomainEvent[] =
    place === undefined ? [] : [{ type: 'device.stored', benchId, place }];
  if (!isRemoved) return [...registered, ...facts, ...uses, ...declared, ...stored];
  const reason: Reason = {
    key: 'removal.declared',
    zone: 'whole-device',
    effect: 'remove',
    sentence: withNote(removalReason, inspection?.note),
  };
  return [
    ...registered,
    ...facts,
    ...uses,
    ...declared,
    { type: 'device.removed', benchId, reasons: [reason], tagNumber: 1 },
  ];
};

/** The type of use of a list counts where a competent person for the model takes the list in, as their own word. */
export const unfitToDetermine = (
  { typeOfUse, modelSheet, row }: PlannedDevice,
  { person, on }: Importer,
): Refusal | undefined =>
  typeOfUse === undefined || competenceOn(person, on, modelSheet).ground === 'designated'
    ? undefined
    : refusal('import-use-not-entitled', { name: person.name, row }, 'typeOfUse');

/** What the list itself says, in the words of the register; nothing is taken over from the model sheet. */
const declaredElement = (
  element: MarkingElement,
  { model, serial, dateOfManufacture }: PlannedDevice,
): KnownMarkingEntry => {
  const { ratedLengthM, lifelineMaterial, lifelineDiameterMm, capacityKg, standard } = model;
  const words: Record<MarkingElement, string | undefined> = {
    manufacturer: model.manufacturer,
    model: model.model,
    serialNumber: serial,
    dateOfManufacture,
    lifelineMaterialAndSize: [
      lifelineMaterial,
      lifelineDiameterMm === undefined ? undefined : `${lifelineDiameterMm} mm`,
    ]
      .filter((part) => part !== undefined)
      .join(', '),
    ratedLength: ratedLengthM === undefined ? undefined : lengthText(ratedLengthM, 'm', 'en'),
    capacityRange: capacityKg === undefined ? undefined : `${capacityKg.from}–${capacityKg.to} kg`,
    standard,
    warnings: undefined,
  };
  const text = words[element];
  return { element, state: 'not read', ...(text === undefined || text === '' ? {} : { text }) };
};
