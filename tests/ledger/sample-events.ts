/** Invented people, model sheets, devices and inspections, as the events that record them. */
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { type BenchId, calendarDate, instant, metres, millimetres } from '../../src/domain/brand.ts';
import type { OtherCode } from '../../src/domain/device.ts';
import type { DomainEvent, Occasion } from '../../src/domain/event.ts';
import { markingElements } from '../../src/domain/marking.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import type { Reason } from '../../src/domain/verdict.ts';

export const occasion: Occasion = {
  at: instant('2026-03-02T08:15:00.000Z'),
  on: calendarDate('2026-03-02'),
  by: 'p-ines',
};

export const occasionOn = (date: string): Occasion => ({
  at: instant(`${date}T08:15:00.000Z`),
  on: calendarDate(date),
  by: 'p-ines',
});

/** The nth of a row of bench IDs, from 0. */
export const benchId = (n: number): BenchId =>
  benchIdFrom(Array.from({ length: 6 }, (_, place) => Math.floor(n / 32 ** place) % 32));

export const stationCreated: DomainEvent = {
  type: 'station.created',
  stationId: 'harrow-point',
  name: 'Harrow Point depot',
  timeZone: 'Europe/Lisbon',
  lengthUnit: 'm',
  demo: true,
};

export const personAdded = (personId: string, name: string, badge = `badge-${personId}`): DomainEvent => ({
  type: 'person.added',
  person: { personId, name, badge, roles: ['inspector'] },
});

export const personDesignated = (personId: string): DomainEvent => ({
  type: 'person.designated',
  personId,
  designation: {
    designatedBy: 'Vera Lund',
    designatedOn: calendarDate('2025-01-10'),
    trainingValidUntil: calendarDate('2027-01-10'),
  },
});

export const modelSheet: ModelSheet = {
  modelSheetId: 'kestrel-9',
  manufacturer: 'Norfell',
  model: 'Kestrel 9',
  ratedLengthM: metres(9),
  lifelineMaterial: 'galvanised',
  lifelineDiameterMm: millimetres(4.8),
  capacityKg: { from: 59, to: 140 },
  standard: 'invented',
  loadIndicatorFitted: true,
};

export const modelSheetRecorded = (changes: Partial<ModelSheet> = {}): DomainEvent => ({
  type: 'model-sheet.recorded',
  modelSheet: { ...modelSheet, ...changes },
});

export const deviceRegistered = (
  id: BenchId,
  serial: string,
  otherCodes: OtherCode[] = [],
  modelSheetId = modelSheet.modelSheetId,
): DomainEvent => ({
  type: 'device.registered',
  benchId: id,
  modelSheetId,
  serial,
  dateOfManufacture: '2023-05',
  marking: markingElements.map((element) => ({ element, state: 'legible' })),
  otherCodes,
});

export const checkedOut = (id: BenchId, userId = 'p-ines'): DomainEvent => ({
  type: 'device.checked-out',
  benchId: id,
  userId,
  preUse: { list: { key: 'desk', version: 1 }, language: 'en' },
});

export const fallCaseOpened: DomainEvent = {
  type: 'fall-case.opened',
  fallCase: 1,
  facts: { job: 'Gantry 4' },
};

export const noticeRecorded: DomainEvent = {
  type: 'notice.recorded',
  notice: 1,
  text: {
    manufacturer: 'Norvane',
    reference: 'SN 2026-02',
    issuedOn: calendarDate('2026-03-02'),
    instruction: { en: 'Return it.' },
    affected: [{ models: ['N6'], serials: [] }],
  },
  matched: [],
};

export const codeBound = (id: BenchId, code: string): DomainEvent => ({
  type: 'device.code-bound',
  benchId: id,
  otherCode: { code, kind: 'maker' },
});

export const crushedLifeline: Reason = {
  key: 'lifeline.crushed',
  zone: 'lifeline',
  effect: 'remove',
  positionM: 3.2,
  sentence: {
    en: 'The lifeline is crushed 3.2 m from the hook.',
    es: 'El cable está aplastado a 3,2 m del gancho.',
  },
};

export const deviceRemoved = (id: BenchId, tagNumber = 1): DomainEvent => ({
  type: 'device.removed',
  benchId: id,
  reasons: [crushedLifeline],
  tagNumber,
});

export const inspectionStarted = (inspection: number, id: BenchId): DomainEvent => ({
  type: 'inspection.started',
  inspection,
  benchId: id,
  procedure: { key: 'cable-srl', version: 1, sha256: '00'.repeat(32) },
});

export const inspectionAnswered = (
  inspection: number,
  id: BenchId,
  check: string,
  note?: string,
): DomainEvent => ({
  type: 'inspection.answered',
  inspection,
  benchId: id,
  check,
  answer:
    note === undefined
      ? { kind: 'good' }
      : {
          kind: 'defects',
          findings: [{ defect: 'crushed', positionM: metres(3.2), note }],
        },
});

export const inspectionPassed = (
  inspection: number,
  id: BenchId,
  dueOn: string,
  tagNumber = 1,
): DomainEvent => ({
  type: 'inspection.signed',
  inspection,
  benchId: id,
  verdict: { kind: 'pass' },
  dueOn: calendarDate(dueOn),
  dueRule: 'program',
  program: { key: 'depot', version: 1 },
  tagNumber,
});

export const inspectionAbandoned = (inspection: number, id: BenchId): DomainEvent => ({
  type: 'inspection.abandoned',
  inspection,
  benchId: id,
  why: 'The device was called away.',
});

/** A station with a person and a model sheet, and nothing on the register. */
export const setUp: readonly DomainEvent[] = [
  stationCreated,
  personAdded('p-ines', 'Inês Caldeira'),
  personDesignated('p-ines'),
  modelSheetRecorded(),
];

/** A device with a passed inspection of three answers: six events. */
export const inspectedDevice = (n: number): readonly DomainEvent[] => [
  deviceRegistered(benchId(n), `SN-${n}`, [{ code: `NF/${n}/2023`, kind: 'maker' }]),
  inspectionStarted(n + 1, benchId(n)),
  inspectionAnswered(n + 1, benchId(n), 'lifeline.condition', 'aplastado, ~3 mm · ±0,1'),
  inspectionAnswered(n + 1, benchId(n), 'lifeline.condition'),
  inspectionAnswered(n + 1, benchId(n), 'brake.engages'),
  inspectionPassed(n + 1, benchId(n), '2026-09-02'),
];

/** A device that cannot be read lies on the bench, and nothing of the register fits it. */
export const identityOpened = (identityCase: number): DomainEvent => ({
  type: 'identity.opened',
  identityCase,
  observation: { serial: 'N2-18-1?7?' },
  ranking: { candidates: [], noneProbability: 1, startWeight: 0, weighed: 0 },
  keptAt: 'Cage',
});
