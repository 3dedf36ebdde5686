/** A held device and the people round it, by the rules alone: events are put upon it, no station, no storage. */
import { type BenchId, type CalendarDate, calendarDate, instant } from '../../../src/domain/brand.ts';
import type { Decision } from '../../../src/domain/decide/decision.ts';
import { decideConfirmEvidence, decideRecordEvidence } from '../../../src/domain/decide/held/evidence.ts';
import { decideRelease } from '../../../src/domain/decide/held/release.ts';
import { decideSign, decideStart } from '../../../src/domain/decide/inspection.ts';
import type { Device } from '../../../src/domain/device.ts';
import type { DomainEvent, RecordedEvent } from '../../../src/domain/event.ts';
import { evolveDevice } from '../../../src/domain/evolve.ts';
import type { EvidenceEntry } from '../../../src/domain/held/evidence.ts';
import { reasonDates } from '../../../src/domain/held/reason-dates.ts';
import type { StrictRelease } from '../../../src/domain/held/release-rules.ts';
import type { Inspection } from '../../../src/domain/inspection.ts';
import { markingElements } from '../../../src/domain/marking.ts';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import type { Person } from '../../../src/domain/person.ts';
import { isRefusal, type Refusal } from '../../../src/domain/refusal.ts';
import type { Reason } from '../../../src/domain/verdict.ts';
import { goodAnswers, procedure, program, releaseRules } from '../../support/shipped-rules.ts';

export const today = calendarDate('2026-03-10');

const designation = {
  designatedBy: 'Head of depot',
  designatedOn: calendarDate('2025-01-01'),
  trainingValidUntil: calendarDate('2027-01-01'),
};
export const competent = (personId: string): Person => ({
  personId,
  name: personId,
  badge: personId,
  roles: ['inspector'],
  designation,
});
export const attendant: Person = { personId: 'dora', name: 'dora', badge: 'dora', roles: ['attendant'] };

const sheet = {
  modelSheetId: 'M1',
  manufacturer: 'Norvane',
  model: 'N6',
  lifelineDiameterMm: 4.8,
  lifelineMinimumDiameterMm: 4.3,
  ratedLengthM: 6,
  loadIndicatorFitted: true,
} as unknown as ModelSheet;

export const document = {
  sha256: 'a'.repeat(64),
  mediaType: 'application/pdf' as const,
  byteLength: 1000,
  name: 'certificate.pdf',
};
export const certificate = { number: 'C-1', on: today, issuer: 'Norvane' };

export const reasonOf = (key: string): Reason => ({
  key,
  zone: 'whole-device',
  effect: 'remove',
  sentence: { en: `Because of ${key}.`, es: `Por ${key}.` },
});

export const benchId = 'K7M3X4Q9TD' as BenchId;

export class HeldDevice {
  device: Device;
  readonly events: RecordedEvent[] = [];
  readonly strict: readonly StrictRelease[] | undefined;
  #inspections = 0;

  constructor(reasons: readonly string[], strict?: readonly StrictRelease[]) {
    this.strict = strict;
    this.device = undefined as unknown as Device;
    this.put([
      {
        type: 'device.registered',
        benchId,
        modelSheetId: 'M1',
        serial: 'N6-1',
        dateOfManufacture: '2025-06',
        marking: markingElements.map((element) => ({ element, state: 'legible' as const })),
        otherCodes: [],
      },
    ]);
    if (reasons.length > 0) this.remove(reasons);
  }

  get terms() {
    return {
      rules: releaseRules,
      program: { ...program, ...(this.strict ? { release: [...this.strict] } : {}) },
    };
  }

  put(events: readonly DomainEvent[], by = 'ines', on: CalendarDate = today): void {
    for (const event of events) {
      const recorded = {
        seq: this.events.length + 1,
        at: instant(`${on}T08:00:00.000Z`),
        on,
        by,
        event,
      };
      this.events.push(recorded);
      this.device = evolveDevice(this.device, recorded)!;
    }
  }

  /** The refusal, or `undefined` where it was recorded. */
  take(decision: Decision, by = 'ines'): Refusal | undefined {
    if (isRefusal(decision)) return decision;
    this.put(decision, by);
    return undefined;
  }

  remove(reasons: readonly string[], on: CalendarDate = today): void {
    const tagNumber = this.device.lastTagNumber + 1;
    this.put([{ type: 'device.removed', benchId, reasons: reasons.map(reasonOf), tagNumber }], 'dora', on);
  }

  record(entry: EvidenceEntry, person = competent('ines')): Refusal | undefined {
    const place = { terms: this.terms, since: reasonDates(this.events), person };
    const occasion = { at: instant(`${today}T08:00:00.000Z`), on: today, by: person.personId };
    return this.take(decideRecordEvidence(this.device, entry, place, occasion), person.personId);
  }

  confirm(evidence: number, person = competent('sol')): Refusal | undefined {
    const occasion = { at: instant(`${today}T08:00:00.000Z`), on: today, by: person.personId };
    return this.take(
      decideConfirmEvidence(this.device, evidence, this.terms, person, occasion),
      person.personId,
    );
  }

  release(tagNumber = this.device.currentTag?.tagNumber ?? 0): Refusal | undefined {
    return this.take(decideRelease(this.device, tagNumber, this.terms));
  }

  start(): Refusal | undefined {
    this.#inspections += 1;
    return this.take(
      decideStart(this.device, this.#inspections, { key: 'cable-srl', version: 2, sha256: '0' }),
    );
  }

  /** Every check good, signed by a competent person. */
  sign(): Refusal | undefined {
    const inspection: Inspection = {
      inspection: this.#inspections,
      benchId,
      procedure: { key: 'cable-srl', version: 2, sha256: '0' },
      startedBy: 'ines',
      startedOn: today,
      state: 'open',
      answers: Object.fromEntries(
        Object.entries(goodAnswers(6)).map(([key, answer]) => [
          key,
          { answer, by: 'ines', at: instant(`${today}T08:00:00.000Z`) },
        ]),
      ),
    };
    const inspected = {
      device: this.device,
      modelSheet: sheet,
      procedure,
      lengthUnit: 'm' as const,
      inForce: { program: this.terms.program },
      releaseRules,
    };
    const occasion = { at: instant(`${today}T08:00:00.000Z`), on: today, by: 'ines' };
    return this.take(decideSign(inspection, inspected, competent('ines'), occasion));
  }
}
