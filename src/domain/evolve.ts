/** How each aggregate changes with an event: the one place where an event turns into state. */
import type { BenchCapacity } from './bench-capacity.ts';
import type { Kit } from './custody/kit.ts';
import type { CountedPlace } from './custody/shelf-count.ts';
import type { CurrentTag, Device } from './device.ts';
import { endTag } from './end-tag.ts';
import type { DomainEvent, RecordedEvent } from './event.ts';
import { amendedDevice } from './evolve-amended.ts';
import { countedPlaces, inCustody, keptKits } from './evolve-custody.ts';
import { heldToReprint, taggedDueOf, withProgram, withRevalidation, withUse } from './evolve-due.ts';
import { held, heldTouches, withClosedReasons } from './evolve-held.ts';
import { withReinspection } from './evolve-reinspection.ts';
import { reinspectionKey } from './held/case-file.ts';
import type { StationKeeping } from './keeping.ts';
import type { ModelSheet } from './model-sheet.ts';
import type { Printer } from './printer.ts';
import type { Program } from './program.ts';
import type { ProgramAdoption } from './program-adoption.ts';
import type { Scanner } from './scanner/scanner.ts';

export interface Station extends StationKeeping {
  readonly stationId: string;
  readonly name: string;
  readonly timeZone: string;
  readonly lengthUnit: 'm' | 'ft';
  readonly demo: boolean;
  readonly printers: readonly Printer[];
  /** The employer's written rules that were adopted last; absent while those that the product ships hold. */
  readonly program?: Program;
  /** Every program that was adopted, oldest first; the last is the one in force. */
  readonly programs?: readonly ProgramAdoption[];
  /** What the bench can take in hand; absent until an administrator says it. */
  readonly benchCapacity?: BenchCapacity;
  /** After how many minutes a window that nobody touches is locked, where an administrator has said it. */
  readonly unattendedMinutes?: number;
  /** How the scanner of the station types, once it was learnt. */
  readonly scanner?: Scanner;
  /** The public keys of its checkpoints, the one in use last; absent before the first was made. */
  readonly checkpointKeys?: readonly string[];
  /** By name; absent before the first was saved. */
  readonly kits?: readonly Kit[];
  /** The latest count of each place, by its code; absent before the first. */
  readonly countedPlaces?: readonly CountedPlace[];
}

/** Which aggregates an event touches; the ledger loads just these, evolves them and writes them back. */
export interface Touched {
  readonly station?: true;
  readonly personId?: string;
  readonly modelSheetId?: string;
  readonly benchId?: DeviceId;
  readonly inspection?: number;
  readonly identityCase?: number;
  /** The key of a case file. */
  readonly caseFile?: string;
  readonly notice?: number;
}
type DeviceId = Device['benchId'];

export const touchedBy = (event: DomainEvent): Touched => {
  switch (event.type) {
    case 'station.created':
    case 'station.key-made':
    case 'program.adopted':
    case 'printer.saved':
    case 'printer.removed':
    case 'scanner.learnt':
    case 'bench.capacity-set':
    case 'station.unattended-set':
    case 'keeping.set':
    case 'backup.made':
    case 'kit.saved':
    case 'kit.removed':
    case 'place.counted':
      return { station: true };
    case 'person.added':
      return { personId: event.person.personId };
    case 'person.designated':
    case 'person.designation-ended':
    case 'person.name-changed':
    case 'person.badge-changed':
    case 'person.roles-changed':
    case 'person.pin-set':
    case 'person.pin-refused':
    case 'person.left':
    case 'person.returned':
      return { personId: event.personId };
    case 'model-sheet.recorded':
      return { modelSheetId: event.modelSheet.modelSheetId };
    case 'device.registered':
    case 'device.facts-recorded':
    case 'device.use-set':
    case 'device.revalidation-recorded':
    case 'device.code-bound':
    case 'device.removed':
    case 'device.marking-read':
    case 'inspection.declared':
    case 'tag.issued':
    case 'tag.proved':
    case 'device.checked-out':
    case 'device.checked-in':
    case 'device.check-in-answered':
    case 'device.transferred':
    case 'device.lost':
    case 'device.stored':
      return { benchId: event.benchId };
    case 'inspection.started':
    case 'inspection.signed': {
      const { benchId, inspection, reinspection } = event;
      return {
        benchId,
        inspection,
        ...(reinspection === undefined ? {} : { caseFile: reinspectionKey(reinspection) }),
      };
    }
    case 'inspection.abandoned':
      return { benchId: event.benchId, inspection: event.inspection };
    case 'reinspection.drawn':
      return { benchId: event.benchId, caseFile: reinspectionKey(event.reinspection) };
    case 'reinspection.seen':
      return { benchId: event.benchId };
    case 'inspection.answered':
      return { inspection: event.inspection };
    case 'device.picture-kept':
    case 'finding.picture-kept':
    case 'fleet.imported':
    case 'record.restored':
      return {};
    case 'identity.opened':
    case 'identity.proposed':
    case 'identity.disagreed':
    case 'identity.left-unidentified':
      return { identityCase: event.identityCase };
    case 'identity.taken':
      return { identityCase: event.identityCase, benchId: event.benchId };
    case 'evidence.recorded':
    case 'evidence.confirmed':
    case 'evidence.withdrawn':
    case 'device.released':
    case 'device.scrapped':
    case 'fall-case.opened':
    case 'fall-case.device-joined':
    case 'fall-case.noted':
    case 'fall-case.closed':
    case 'fall-case.device-closed':
    case 'repair-terms.recorded':
    case 'device-quote.recorded':
    case 'returns-basis.recorded':
    case 'return-batch.opened':
    case 'return-batch.device-added':
    case 'return-batch.device-taken-out':
    case 'return-batch.shipped':
    case 'return-batch.device-shipped':
    case 'return-batch.followed-up':
    case 'return-batch.device-came-back':
      return heldTouches(event);
    case 'notice.recorded':
      return { notice: event.notice };
    case 'record.amended': {
      const { benchId, inspection, personId } = event;
      return {
        ...(benchId === undefined ? {} : { benchId }),
        ...(inspection === undefined ? {} : { inspection }),
        ...(personId === undefined ? {} : { personId }),
      };
    }
  }
};

export const evolveStation = (station: Station | undefined, recorded: RecordedEvent): Station | undefined => {
  const { event, on, at } = recorded;
  if (event.type === 'station.created') {
    const { type: _type, ...created } = event;
    return { ...created, printers: [] };
  }
  if (station === undefined) return undefined;
  switch (event.type) {
    case 'station.key-made':
      return { ...station, checkpointKeys: [...(station.checkpointKeys ?? []), event.publicKey] };
    case 'program.adopted':
      return withProgram(station, event, recorded);
    case 'printer.saved':
      return { ...station, printers: [...withoutPrinter(station, event.printer.printerId), event.printer] };
    case 'printer.removed':
      return { ...station, printers: withoutPrinter(station, event.printerId) };
    case 'scanner.learnt': {
      const { scanner: _before, ...unlearnt } = station;
      return event.scanner === undefined ? unlearnt : { ...unlearnt, scanner: event.scanner };
    }
    case 'bench.capacity-set':
      return { ...station, benchCapacity: event.capacity };
    case 'station.unattended-set':
      return { ...station, unattendedMinutes: event.minutes };
    case 'keeping.set': {
      const { keeping: _before, ...unkept } = station;
      return event.keeping === undefined ? unkept : { ...unkept, keeping: { ...event.keeping, since: on } };
    }
    case 'backup.made':
      return { ...station, lastBackup: { ...event.backup, on, at } };
    case 'kit.saved':
    case 'kit.removed':
      return { ...station, kits: keptKits(station.kits ?? [], event) };
    case 'place.counted':
      return { ...station, countedPlaces: countedPlaces(station.countedPlaces ?? [], recorded, event) };
    default:
      return station;
  }
};

const withoutPrinter = ({ printers }: Station, printerId: string): readonly Printer[] =>
  printers.filter((printer) => printer.printerId !== printerId);

export const evolveModelSheet = (
  sheet: ModelSheet | undefined,
  { event }: RecordedEvent,
): ModelSheet | undefined => (event.type === 'model-sheet.recorded' ? event.modelSheet : sheet);

export const evolveDevice = (device: Device | undefined, recorded: RecordedEvent): Device | undefined => {
  const { event, on } = recorded;
  if (event.type === 'device.registered') {
    const { type: _type, ...registered } = event;
    return { ...registered, registeredOn: on, standing: 'new', reasons: [], pastTags: [], lastTagNumber: 0 };
  }
  return device === undefined ? undefined : withReinspection(evolved(device, recorded), recorded);
};

const evolved = (device: Device, recorded: RecordedEvent): Device => {
  const { event, on, by } = recorded;
  switch (event.type) {
    case 'device.facts-recorded': {
      const { purchasedOn: _purchased, firstUsedOn: _firstUsed, ...rest } = device;
      const { type: _type, benchId: _benchId, ...facts } = event;
      return { ...rest, ...facts };
    }
    case 'device.use-set':
      return withUse(device, event, recorded);
    case 'device.revalidation-recorded':
      return withRevalidation(device, event);
    case 'device.code-bound':
      return { ...device, otherCodes: [...device.otherCodes, event.otherCode] };
    case 'device.removed':
      return outOfService(device, [...device.reasons, ...event.reasons], event.tagNumber, on, by);
    case 'tag.issued':
      return withCurrentTag(
        heldToReprint(device, event),
        event.tagNumber,
        ({ provedOn: _proved, ...tag }) => ({
          ...tag,
          printed: tag.printed + 1,
        }),
      );
    case 'tag.proved':
      return withCurrentTag(device, event.tagNumber, (tag) => ({ ...tag, provedOn: on }));
    case 'identity.taken': {
      const { identityCase, proposedBy } = event;
      return { ...device, presumedIdentity: { identityCase, proposedBy, confirmedBy: by, on } };
    }
    case 'device.marking-read':
      return markingRead(device, event);
    case 'inspection.declared': {
      const { type: _type, benchId: _benchId, ...declared } = event;
      return { ...device, declaredInspections: [...(device.declaredInspections ?? []), declared] };
    }
    case 'inspection.started':
      return { ...device, openInspection: event.inspection };
    case 'inspection.abandoned':
      return withoutOpenInspection(device);
    case 'inspection.signed':
      return signed(withoutOpenInspection(device), event, on, by);
    case 'device.checked-out':
    case 'device.checked-in':
    case 'device.check-in-answered':
    case 'device.transferred':
    case 'device.lost':
    case 'device.stored':
      return inCustody(device, recorded, event);
    case 'record.amended':
      return amendedDevice(device, recorded, event);
    default:
      return held(device, recorded);
  }
};

/** Words that were known before are kept where the new reading says none. An intact marking says who the device is. */
const markingRead = (
  device: Device,
  { marking, reprintBecause }: Extract<DomainEvent, { type: 'device.marking-read' }>,
): Device => {
  const { presumedIdentity, ...rest } = device;
  const isIntact = marking.every(({ state }) => state === 'legible');
  const known = new Map(device.marking.map(({ element, text }) => [element, text]));
  return {
    ...rest,
    ...(isIntact || presumedIdentity === undefined ? {} : { presumedIdentity }),
    marking: marking.map(({ element, state, text = known.get(element) }) => ({
      element,
      state,
      ...(text === undefined ? {} : { text }),
    })),
    ...(reprintBecause === undefined ? {} : { labelsReprinted: (device.labelsReprinted ?? 0) + 1 }),
  };
};

const withCurrentTag = (
  device: Device,
  tagNumber: number,
  change: (tag: CurrentTag) => CurrentTag,
): Device =>
  device.currentTag?.tagNumber === tagNumber ? { ...device, currentTag: change(device.currentTag) } : device;

const withoutOpenInspection = ({ openInspection: _open, ...device }: Device): Device => device;

/** Its release to the bench ends with that. What is at its manufacturer stays there. */
const outOfService = (
  { taggedDue: _due, release: _release, ...device }: Device,
  reasons: Device['reasons'],
  tagNumber: number,
  on: RecordedEvent['on'],
  by: string,
): Device => ({
  ...device,
  standing: device.standing === 'at manufacturer' ? 'at manufacturer' : 'quarantined',
  reasons,
  removedBy: by,
  pastTags: endTag(
    device,
    on,
    device.currentTag?.kind === 'quarantine' ? 'removed again' : 'removed from service',
  ),
  currentTag: { kind: 'quarantine', tagNumber, issuedOn: on, printed: 0 },
  lastTagNumber: tagNumber,
});

const signed = (
  device: Device,
  event: Extract<DomainEvent, { type: 'inspection.signed' }>,
  on: RecordedEvent['on'],
  by: string,
): Device => {
  switch (event.verdict.kind) {
    case 'incomplete':
      return device;
    case 'remove from service': {
      const lastInspection = { inspection: event.inspection, on, verdict: event.verdict.kind, by };
      const reasons = [...device.reasons, ...event.verdict.reasons];
      return { ...outOfService(device, reasons, event.tagNumber, on, by), lastInspection };
    }
    case 'pass': {
      if (event.reinspection !== undefined) return device;
      const { removedBy: _removedBy, ...rest } = withClosedReasons(device, event.inspection, on);
      return {
        ...rest,
        standing: 'in service',
        reasons: [],
        lastInspection: { inspection: event.inspection, on, verdict: event.verdict.kind, by },
        ...taggedDueOf(event),
        pastTags: endTag(device, on, 'new inspection'),
        currentTag: { kind: 'status', tagNumber: event.tagNumber, issuedOn: on, printed: 0 },
        lastTagNumber: event.tagNumber,
      };
    }
  }
};

/** Evolves one of several aggregates of a kind, where the event touches one: `key` is absent where it does not. */
export const evolveIn = <Key, Value>(
  values: Map<Key, Value>,
  key: Key | undefined,
  recorded: RecordedEvent,
  evolveOne: (value: Value | undefined, recorded: RecordedEvent) => Value | undefined,
): void => {
  if (key === undefined) return;
  const evolved = evolveOne(values.get(key), recorded);
  if (evolved !== undefined) values.set(key, evolved);
};
