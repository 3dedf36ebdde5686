/** The rows of the exported tables, made from the events alone, so that they say what the events say and nothing later. */
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { CustodySpell } from '../../domain/custody/custody.ts';
import type { Device, OtherCode } from '../../domain/device.ts';
import { dueDatesOf } from '../../domain/due/due-dates.ts';
import type { DueProgram } from '../../domain/due/due-rules.ts';
import { tradeProgram } from '../../domain/due/trade-program.ts';
import { currentUse } from '../../domain/due/type-of-use.ts';
import type { RecordedEvent } from '../../domain/event.ts';
import { evolveDevice, evolveIn, evolveModelSheet, touchedBy } from '../../domain/evolve.ts';
import { changedSpells } from '../../domain/evolve-custody.ts';
import { evolveInspection } from '../../domain/evolve-inspection.ts';
import { evolvePerson } from '../../domain/evolve-person.ts';
import type { Inspection } from '../../domain/inspection.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import type { Person } from '../../domain/person.ts';
import type { Reason } from '../../domain/verdict.ts';
import { namesPicture, type RecordedFindingPicture, type RecordedPicture } from '../kept-pictures.ts';
import { ExportHeldRows } from './export-held-rows.ts';
import type { ExportTable } from './export-schema.ts';

export type ExportValue = string | number | undefined;
export type ExportRow = Readonly<Record<string, ExportValue>>;
/** Takes a row of a table; the tables are written as the events go by. */
export type RowSink = (table: ExportTable, row: ExportRow) => void;

/** Keeps devices, sheets and people, and of inspections and of times out only those that are open. */
export class ExportRows {
  readonly #sink: RowSink;
  readonly #people = new Map<string, Person>();
  readonly #sheets = new Map<string, ModelSheet>();
  readonly #devices = new Map<Device['benchId'], Device>();
  readonly #open = new Map<number, Inspection>();
  readonly #out = new Map<number, CustodySpell>();
  readonly #held: ExportHeldRows;
  #program: DueProgram = tradeProgram;

  constructor(sink: RowSink) {
    this.#sink = sink;
    this.#held = new ExportHeldRows(sink, (personId) => this.#name(personId));
  }

  take(recorded: RecordedEvent): void {
    const { personId, modelSheetId, benchId, inspection } = touchedBy(recorded.event);
    if (recorded.event.type === 'program.adopted') this.#program = recorded.event.program;
    evolveIn(this.#people, personId, recorded, evolvePerson);
    evolveIn(this.#sheets, modelSheetId, recorded, evolveModelSheet);
    const before = benchId && this.#devices.get(benchId);
    evolveIn(this.#devices, benchId, recorded, evolveDevice);
    const after = benchId === undefined ? undefined : this.#devices.get(benchId);
    for (const spell of changedSpells(before, after, recorded)) this.#spell(spell);
    evolveIn(this.#open, inspection, recorded, evolveInspection);
    this.#reasonsOf(recorded);
    this.#correctionOf(recorded);
    this.#held.take(recorded, after);
    if (namesPicture(recorded)) this.#picture(recorded);
    const ended = inspection === undefined ? undefined : this.#open.get(inspection);
    if (ended === undefined || ended.state === 'open') return;
    this.#inspection(ended);
    this.#open.delete(ended.inspection);
  }

  /** What is known only at the end. */
  finish(): void {
    for (const inspection of this.#open.values()) this.#inspection(inspection);
    for (const spell of this.#out.values()) this.#custody(spell);
    for (const person of this.#people.values()) {
      const { personId, name, badge, roles, left } = person;
      const { scope, ...designation } = person.designation ?? {};
      const now = { ...designation, scope: scope?.join(', '), leftOn: left?.on };
      this.#sink('people', { personId, name, badge, roles: roles.join(', '), ...now });
    }
    for (const sheet of this.#sheets.values()) {
      const { manufacturerIntervalMonths, manufacturerReference, manufacturerContact, manual } = sheet;
      const { lifelineMinimumDiameterMm, manufacturerRevalidationMonths, serviceLife } = sheet;
      const rest = {
        lifelineMinimumDiameterMm,
        manufacturerIntervalMonths,
        manufacturerRevalidationMonths,
        serviceLifeYears: serviceLife?.years,
        serviceLifeFrom: serviceLife?.from,
        manufacturerReference,
        manufacturerContact,
        manual,
      };
      this.#sink('model-sheets', { modelSheetId: sheet.modelSheetId, ...sheetCells(sheet), ...rest });
    }
    for (const device of this.#devices.values()) this.#device(device);
    this.#held.finish();
  }

  #name(personId: string): string {
    return this.#people.get(personId)?.name ?? personId;
  }

  #device(device: Device): void {
    const benchId = formatBenchId(device.benchId);
    const sheet = this.#sheets.get(device.modelSheetId);
    const { lastInspection: last } = device;
    this.#sink('devices', {
      benchId,
      ...(sheet === undefined ? {} : sheetCells(sheet)),
      serial: device.serial,
      dateOfManufacture: device.dateOfManufacture,
      makerCodes: codesOf(device, 'maker'),
      rfidCodes: codesOf(device, 'rfid'),
      oldTagCodes: codesOf(device, 'old tag'),
      otherCodes: codesOf(device, 'other'),
      regularUser: device.regularUserId === undefined ? undefined : this.#name(device.regularUserId),
      purchasedOn: device.purchasedOn,
      firstUsedOn: device.firstUsedOn,
      place: device.stored?.place,
      holder: device.custody === undefined ? undefined : this.#name(device.custody.userId),
      standing: device.standing,
      registeredOn: device.registeredOn,
      lastInspectedOn: last?.on,
      lastInspectedBy: last === undefined ? undefined : this.#name(last.by),
      lastResult: last === undefined ? undefined : last.verdict === 'pass' ? 'passed' : 'removed',
      ...this.#dueCells(device, sheet),
      tagNumber: device.currentTag?.tagNumber,
      modelSheetId: device.modelSheetId,
    });
    for (const { source, ...declared } of device.declaredInspections ?? []) {
      const { fileName, sha256: fileSha256, row } = source;
      this.#sink('declared-inspections', { benchId, ...declared, fileName, fileSha256, row });
    }
    const current = device.currentTag === undefined ? [] : [device.currentTag];
    for (const tag of [...device.pastTags, ...current]) this.#sink('tags', { benchId, ...tag });
  }

  #dueCells(device: Device, sheet: ModelSheet | undefined): ExportRow {
    const use = currentUse(device.uses);
    const due = sheet === undefined ? undefined : dueDatesOf(device, sheet, this.#program)[0];
    const { revalidatedOn, certificate } = device.revalidation ?? {};
    const known = {
      typeOfUse: use?.typeOfUse,
      typeOfUseFrom: use?.from,
      revalidatedOn,
      revalidationCertificate: certificate,
    };
    return { ...known, dueOn: due?.on, dueFor: due?.what, dueRule: due?.rule };
  }

  #inspection(inspection: Inspection): void {
    const { signed, abandoned, procedure } = inspection;
    this.#sink('inspections', {
      inspection: inspection.inspection,
      benchId: formatBenchId(inspection.benchId),
      state: inspection.state,
      startedOn: inspection.startedOn,
      startedBy: this.#name(inspection.startedBy),
      endedOn: signed?.on ?? abandoned?.on,
      endedBy: this.#name(signed?.by ?? abandoned?.by ?? ''),
      verdict: signed?.verdict.kind,
      dueOn: signed?.dueOn,
      tagNumber: signed?.tagNumber,
      procedure: `${procedure.key} v${procedure.version}`,
      why: abandoned?.why,
      reinspection: inspection.reinspection,
    });
    for (const [check, { answer, by, at }] of Object.entries(inspection.answers)) {
      this.#sink('answers', {
        inspection: inspection.inspection,
        check,
        answer: answer.kind === 'marking' ? answer.state : answer.kind,
        confirmedM: answer.kind === 'length' ? answer.confirmedM : undefined,
        by: this.#name(by),
        at,
      });
      for (const finding of answer.kind === 'defects' ? answer.findings : [])
        this.#sink('findings', { inspection: inspection.inspection, check, ...finding });
      for (const reading of answer.kind === 'diameters' ? answer.readings : [])
        this.#sink('readings', { inspection: inspection.inspection, check, ...reading });
    }
  }

  #spell(spell: CustodySpell): void {
    if (spell.ended === undefined) {
      this.#out.set(spell.spell, spell);
      return;
    }
    this.#out.delete(spell.spell);
    this.#custody(spell);
  }

  #custody({ benchId, userId, since, handedOutBy, expectedOn, kitId, lostOn, ended }: CustodySpell): void {
    this.#sink('custody', {
      benchId: formatBenchId(benchId),
      user: this.#name(userId),
      since: since.on,
      handedOutBy: this.#name(handedOutBy),
      expectedOn,
      kitId,
      lostOn,
      endedOn: ended?.on,
      how: ended?.how,
      endedBy: ended === undefined ? undefined : this.#name(ended.by),
    });
  }

  #picture({ event, on, by }: RecordedPicture | RecordedFindingPicture): void {
    const { type: _type, mediaType: _mediaType, ...picture } = event;
    const benchId = formatBenchId(event.benchId);
    this.#sink('pictures', { ...picture, benchId, keptOn: on, keptBy: this.#name(by) });
  }

  #correctionOf({ seq, event, on, by }: RecordedEvent): void {
    if (event.type !== 'record.amended') return;
    const { amends, benchId, inspection, personId, correction, because } = event;
    this.#sink('corrections', {
      seq,
      amends,
      benchId: benchId === undefined ? undefined : formatBenchId(benchId),
      inspection,
      personId,
      field: correction.field,
      check: correction.field === 'answer' ? correction.check : undefined,
      was: asCell(correction.was),
      now: asCell(correction.now),
      because,
      on,
      by: this.#name(by),
    });
  }

  #reasonsOf({ event, on, by }: RecordedEvent): void {
    const write = (benchId: Device['benchId'], reasons: readonly Reason[], inspection?: number): void => {
      for (const { key, zone, effect, positionM, sentence } of reasons) {
        const said = { english: sentence.en, spanish: sentence.es };
        const device = { benchId: formatBenchId(benchId), inspection, on, by: this.#name(by) };
        this.#sink('reasons', { ...device, key, zone, effect, positionM, ...said });
      }
    };
    if (event.type === 'device.removed') write(event.benchId, event.reasons);
    if (event.type === 'inspection.signed' && event.verdict.kind === 'remove from service')
      write(event.benchId, event.verdict.reasons, event.inspection);
  }
}

const asCell = (value: string | object | undefined): string | undefined =>
  typeof value === 'object' ? JSON.stringify(value) : value;

const sheetCells = (sheet: ModelSheet): ExportRow => ({
  manufacturer: sheet.manufacturer,
  model: sheet.model,
  ratedLengthM: sheet.ratedLengthM,
  lifelineMaterial: sheet.lifelineMaterial,
  lifelineDiameterMm: sheet.lifelineDiameterMm,
  capacityFromKg: sheet.capacityKg.from,
  capacityToKg: sheet.capacityKg.to,
  standard: sheet.standard,
  loadIndicator: sheet.loadIndicatorFitted ? 'yes' : 'no',
});

const codesOf = ({ otherCodes }: Device, kind: OtherCode['kind']): string =>
  otherCodes
    .filter((code) => code.kind === kind)
    .map(({ code }) => code)
    .join('\n');
