/** A few devices and people, and commands upon them by the rules alone: no station, no clock, no storage. */
import type { Answer } from '../../src/domain/answer.ts';
import { type BenchId, type CalendarDate, calendarDate, instant } from '../../src/domain/brand.ts';
import { addDays } from '../../src/domain/calendar.ts';
import type { CheckInAnswer } from '../../src/domain/custody/check-in-answer.ts';
import { deskRulesSchema } from '../../src/domain/custody/desk-rules.ts';
import { decideCheckIn } from '../../src/domain/decide/check-in.ts';
import { decideCheckOut, decideLost, decideTransfer } from '../../src/domain/decide/custody.ts';
import type { Decision } from '../../src/domain/decide/decision.ts';
import { decideRemove } from '../../src/domain/decide/device.ts';
import { decideRecordEvidence } from '../../src/domain/decide/held/evidence.ts';
import { decideCloseFallCase, decideOpenFallCase } from '../../src/domain/decide/held/fall-case.ts';
import { decideRelease } from '../../src/domain/decide/held/release.ts';
import { decideScrap } from '../../src/domain/decide/held/scrap.ts';
import {
  decideAnswer,
  decideBreakOff,
  decideSign,
  decideStart,
  type InspectionCase,
} from '../../src/domain/decide/inspection.ts';
import { decideNotice } from '../../src/domain/decide/notice.ts';
import { decideRelabel } from '../../src/domain/decide/relabel.ts';
import { decideProveTag } from '../../src/domain/decide/tag.ts';
import type { Device } from '../../src/domain/device.ts';
import { dueDatesOf } from '../../src/domain/due/due-dates.ts';
import type { DomainEvent } from '../../src/domain/event.ts';
import { evolveDevice } from '../../src/domain/evolve.ts';
import { evolveInspection } from '../../src/domain/evolve-inspection.ts';
import type { FallCase } from '../../src/domain/held/fall-case.ts';
import type { Inspection } from '../../src/domain/inspection.ts';
import { markingElements } from '../../src/domain/marking.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import type { Person } from '../../src/domain/person.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { asset, goodAnswer, program, releaseRules, procedure as shipped } from '../support/shipped-rules.ts';
import { noticeText, recalledDevice } from './invariants-notice.ts';

export const deskRules = deskRulesSchema.parse(asset('desk/desk.v2.json'));

/** One check of each kind, and the brake at its three positions; the rules do not know how many checks there are. */
const kept = [
  'marking.serialNumber',
  'marking.ratedLength',
  'lower-hook.body',
  'payout.full-length',
  'brake.near-housing',
  'brake.midway',
  'brake.near-full-payout',
];
export const procedure: Procedure = {
  ...shipped,
  checks: shipped.checks.filter(({ key }) => kept.includes(key)),
};

export const sheet: ModelSheet = {
  modelSheetId: 'M1',
  manufacturer: 'Norvane',
  model: 'N6',
  lifelineMaterial: 'galvanised',
  lifelineDiameterMm: 4.8,
  ratedLengthM: 6,
  capacityKg: { from: 59, to: 141 },
  standard: 'ANSI Z359.14',
  loadIndicatorFitted: false,
} as unknown as ModelSheet;

const person = (personId: string, roles: Person['roles'], more: Partial<Person> = {}): Person => ({
  personId,
  name: personId,
  badge: personId,
  roles,
  ...more,
});
const designation = {
  designatedBy: 'Head of depot',
  designatedOn: calendarDate('2025-01-01'),
  trainingValidUntil: calendarDate('2027-01-01'),
};

export const people = {
  /** Competent until the training ends in the middle of what may happen. */
  inspector: person('inspector', ['inspector'], { designation }),
  /** As competent, and the regular user of every device. */
  regular: person('regular', ['inspector', 'user'], { designation }),
  /** As competent; makes the second inspection of blind pairs. */
  second: person('second', ['inspector'], { designation }),
  undesignated: person('undesignated', ['inspector']),
  admin: person('admin', ['administrator']),
  nadia: person('nadia', ['user']),
  mara: person('mara', ['user']),
  leaver: person('leaver', ['user'], {
    left: { on: calendarDate('2025-12-01'), because: 'Moved' },
  }),
} as const;
export type Name = keyof typeof people;

export const badAnswer = (key: string): Answer => {
  const check = procedure.checks.find((each) => each.key === key)!;
  switch (check.kind) {
    case 'marking':
      return { kind: 'marking', state: 'illegible' };
    case 'payout-length':
      return { kind: 'length', confirmedM: 5.99 as never };
    case 'condition':
      return {
        kind: 'defects',
        findings: [{ defect: check.defects.find(({ effect }) => effect === 'remove')!.key }],
      };
    case 'lifeline-diameter':
      throw new Error('No diameter is read here.');
  }
};

export interface Outcome {
  readonly refused?: string;
  readonly events: readonly DomainEvent[];
}

export class World {
  today: CalendarDate = calendarDate('2026-01-10');
  readonly devices = new Map<number, Device>();
  readonly #inspections = new Map<number, Inspection>();
  readonly #withDue = new WeakMap<Device, Device>();
  #seq = 0;
  #latest = 0;
  #notices = 0;

  constructor(count: number) {
    for (let index = 0; index < count; index += 1) this.#apply(index, 'inspector', [registered(index)]);
  }

  /** With the date that follows from all rules, as the register shows it. */
  device(index: number): Device {
    const device = this.devices.get(index)!;
    if (device.standing !== 'in service') return device;
    const known = this.#withDue.get(device);
    if (known !== undefined) return known;
    const [due] = dueDatesOf(device, sheet, program);
    const dated = due === undefined ? device : { ...device, dueOn: due.on, dueWhat: due.what };
    this.#withDue.set(device, dated);
    return dated;
  }

  /** As no command here makes it. */
  force(index: number, state: Partial<Device>): void {
    this.devices.set(index, { ...this.devices.get(index)!, ...state });
  }

  daysPass(days: number): void {
    this.today = addDays(this.today, days);
  }

  /** What the rules say of a command that has no method of its own here. */
  decided(index: number, by: Name, decision: Decision): Outcome {
    return this.#run(index, by, decision);
  }

  inspection(number: number | undefined): Inspection | undefined {
    return number === undefined ? undefined : this.#inspections.get(number);
  }

  get nextInspection(): number {
    return this.#latest + 1;
  }

  start(index: number): Outcome {
    const { key, version } = procedure;
    return this.#run(
      index,
      'inspector',
      decideStart(this.device(index), this.#latest + 1, { key, version, sha256: '0' }),
    );
  }

  answerAll(index: number, by: Name, bad: string | undefined, skip: string | undefined): void {
    for (const check of procedure.checks) {
      if (check.key === skip) continue;
      const inspection = this.#open(index);
      if (inspection === undefined) return;
      const answer = check.key === bad ? badAnswer(check.key) : goodAnswer(check, sheet.ratedLengthM);
      this.#run(index, by, decideAnswer(inspection, this.#caseOf(index), check.key, answer));
    }
  }

  sign(index: number, by: Name): Outcome {
    const inspection = this.#open(index);
    if (inspection === undefined) return { refused: 'none open', events: [] };
    return this.#run(index, by, decideSign(inspection, this.#caseOf(index), people[by], this.#occasion(by)));
  }

  breakOff(index: number): Outcome {
    const inspection = this.#open(index);
    if (inspection === undefined) return { refused: 'none open', events: [] };
    return this.#run(index, 'inspector', decideBreakOff(inspection, this.#caseOf(index), 'Random.'));
  }

  remove(index: number): Outcome {
    return this.#run(index, 'nadia', decideRemove(this.device(index), program, 'fall', undefined, []));
  }

  /** A notice of the manufacturer means this device: for certain, or possibly. */
  recall(index: number, level: 'certain' | 'possible'): Outcome {
    this.#notices += 1;
    const recalled = recalledDevice(this.device(index), level);
    const notice = { notice: this.#notices, text: noticeText(this.#notices) };
    const decision = decideNotice(notice, [], [recalled], people.inspector, this.#occasion('inspector'));
    return this.#run(index, 'inspector', decision);
  }

  prove(index: number, tagNumber: number): Outcome {
    return this.#run(index, 'nadia', decideProveTag(this.device(index), tagNumber));
  }

  readMarking(index: number, isIntact: boolean): Outcome {
    const device = this.device(index);
    const marking = markingElements.map((element) => ({
      element,
      state: isIntact || element !== 'ratedLength' ? ('legible' as const) : ('missing' as const),
      ...(element === 'serialNumber' ? { text: device.serial } : {}),
    }));
    return this.#run(
      index,
      'inspector',
      decideRelabel(
        device,
        { marking, reprintBecause: 'unreadable' as never },
        procedure,
        [],
        people.inspector,
        this.#occasion('inspector'),
      ),
    );
  }

  checkOut(index: number, user: Name, isConfirmed: boolean, days: number | undefined): Outcome {
    const device = this.device(index);
    return this.#run(
      index,
      'nadia',
      decideCheckOut(device, this.#handOut(user, isConfirmed, days), device.custody?.userId),
    );
  }

  checkIn(index: number, answers: readonly CheckInAnswer[], withoutCheckOut: boolean): Outcome {
    return this.#run(
      index,
      'nadia',
      decideCheckIn(this.device(index), deskRules, { answeredBy: 'nadia', answers, withoutCheckOut }, []),
    );
  }

  transfer(index: number, user: Name, isConfirmed: boolean, because: string | undefined): Outcome {
    const device = this.device(index);
    const holder = device.custody && people[device.custody.userId as Name];
    return this.#run(
      index,
      'nadia',
      decideTransfer(device, { ...this.#handOut(user, isConfirmed, undefined), because }, holder),
    );
  }

  lose(index: number): Outcome {
    return this.#run(index, 'nadia', decideLost(this.device(index), 'nadia', 'Random.', deskRules.lost));
  }

  /** For the reasons at these places, by a certificate of today; without one it is a statement that nobody else agreed to. */
  recordEvidence(index: number, kind: string, covers: number[]): Outcome {
    const device = this.device(index);
    const isCertified = kind !== 'doubt-settled';
    const entry = {
      kind,
      covers,
      documents: isCertified ? [file] : [],
      ...(isCertified
        ? { certificate: { number: 'C', on: this.today, issuer: 'Norvane' } }
        : { statement: 'Random.' }),
    };
    const place = {
      terms: { rules: releaseRules, program },
      since: device.reasons.map(() => this.today),
      person: people.inspector,
    };
    return this.#run(
      index,
      'inspector',
      decideRecordEvidence(device, entry, place, this.#occasion('inspector')),
    );
  }

  /** A fall case, opened by one and closed by another. */
  investigate(index: number): Outcome {
    const facts = {
      happenedOn: this.today,
      userId: 'nadia',
      job: 'Random',
      indicator: 'not clear' as const,
      informed: 'Head of depot',
      bagNumber: 'B',
    };
    const fallCase = { fallCase: 1, facts, linked: [] };
    const opened = this.#run(
      index,
      'nadia',
      decideOpenFallCase(this.device(index), fallCase, this.#occasion('nadia')),
    );
    if (opened.refused !== undefined) return opened;
    const file: FallCase = {
      kind: 'fall case',
      number: 1,
      phase: 'open',
      openedBy: 'nadia',
      openedOn: this.today,
      facts,
      devices: [this.device(index).benchId],
      photos: [],
      custody: [],
    };
    return this.#run(
      index,
      'admin',
      decideCloseFallCase(file, 'Random.', people.admin, this.#occasion('admin')),
    );
  }

  release(index: number, tagNumber: number): Outcome {
    return this.#run(
      index,
      'inspector',
      decideRelease(this.device(index), tagNumber, { rules: releaseRules, program }),
    );
  }

  scrap(index: number, isCut: boolean, witness: Name): Outcome {
    const scrapping = { lifelineCut: isCut, markingDefaced: true, witness: people[witness], photos: [file] };
    return this.#run(index, 'inspector', decideScrap(this.device(index), scrapping, people.inspector));
  }

  #handOut(user: Name, isConfirmed: boolean, days: number | undefined) {
    return {
      user: people[user],
      today: this.today,
      ...(days === undefined ? {} : { expectedOn: addDays(this.today, days) }),
      ...(isConfirmed ? { preUse: { list: { key: 'desk', version: 1 }, language: 'en' as const } } : {}),
    };
  }

  #open(index: number): Inspection | undefined {
    const { openInspection } = this.devices.get(index)!;
    return openInspection === undefined ? undefined : this.#inspections.get(openInspection);
  }

  #caseOf(index: number): InspectionCase {
    return {
      device: this.device(index),
      modelSheet: sheet,
      procedure,
      lengthUnit: 'm',
      inForce: { program },
      releaseRules,
    };
  }

  #occasion(by: string) {
    return { at: instant(`${this.today}T08:00:00.000Z`), on: this.today, by };
  }

  #run(index: number, by: Name, decision: Decision): Outcome {
    if (isRefusal(decision)) return { refused: decision.code, events: [] };
    this.#apply(index, by, decision);
    return { events: decision };
  }

  #apply(index: number, by: string, events: readonly DomainEvent[]): void {
    for (const event of events) {
      this.#seq += 1;
      const recorded = { seq: this.#seq, ...this.#occasion(by), event };
      const device = evolveDevice(this.devices.get(index), recorded);
      if (device !== undefined) this.devices.set(index, device);
      if (!('inspection' in event) || event.inspection === undefined) continue;
      this.#latest = Math.max(this.#latest, event.inspection);
      const inspection = evolveInspection(this.#inspections.get(event.inspection), recorded);
      if (inspection !== undefined) this.#inspections.set(event.inspection, inspection);
    }
  }
}

const file = { sha256: 'a'.repeat(64), mediaType: 'image/jpeg' as const, byteLength: 1, name: 'a.jpg' };

const registered = (index: number): DomainEvent => ({
  type: 'device.registered',
  benchId: `000000000${index}` as BenchId,
  modelSheetId: sheet.modelSheetId,
  serial: `N6-${index}`,
  dateOfManufacture: '2025-06',
  marking: markingElements.map((element) => ({ element, state: 'legible' as const })),
  otherCodes: [],
  regularUserId: 'regular',
});
