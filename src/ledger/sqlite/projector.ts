/** Fills the projections: loads the aggregates that a run of events touches, evolves them, and writes back what changed. */
import type { Insertable } from 'kysely';
import type { CustodySpell } from '../../domain/custody/custody.ts';
import { type Device, hasUnprovedTag } from '../../domain/device.ts';
import type { DueProgram } from '../../domain/due/due-rules.ts';
import { tradeProgram } from '../../domain/due/trade-program.ts';
import type { RecordedEvent } from '../../domain/event.ts';
import {
  evolveDevice,
  evolveIn,
  evolveModelSheet,
  evolveStation,
  type Station,
  touchedBy,
} from '../../domain/evolve.ts';
import { evolveCaseFile } from '../../domain/evolve-case-file.ts';
import { changedSpells } from '../../domain/evolve-custody.ts';
import { evolveIdentityCase } from '../../domain/evolve-identity-case.ts';
import { evolveInspection } from '../../domain/evolve-inspection.ts';
import { evolveNotice } from '../../domain/evolve-notice.ts';
import { evolvePerson } from '../../domain/evolve-person.ts';
import { type CaseFile, keyOf } from '../../domain/held/case-file.ts';
import type { IdentityCase } from '../../domain/identity/identity-case.ts';
import type { Inspection } from '../../domain/inspection.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import type { Person } from '../../domain/person.ts';
import type { Notice } from '../../domain/recall/notice.ts';
import { canonicalJson } from '../canonical-json.ts';
import { caseFilesWith, writeCaseFiles } from './case-file-rows.ts';
import { dueColumns, dueProgramIn, recomputeDueDates } from './due-columns.ts';
import { writeNotices } from './notice-rows.ts';
import type { LedgerDatabase, LedgerTables } from './schema.ts';
import { compareKey, searchKeys } from './search.ts';
import { stateOf } from './state.ts';

/** Events, and rows, that are handled at a time: bounds memory and the parameters of a statement. */
export const batchSize = 500;

/** The events follow one another and follow those that were projected before. */
export const project = async (database: LedgerDatabase, events: readonly RecordedEvent[]): Promise<void> => {
  for (let start = 0; start < events.length; start += batchSize) {
    await projectBatch(database, events.slice(start, start + batchSize));
  }
};

interface Aggregates {
  station: Station | undefined;
  readonly people: Map<string, Person>;
  readonly modelSheets: Map<string, ModelSheet>;
  readonly devices: Map<Device['benchId'], Device>;
  readonly inspections: Map<number, Inspection>;
  readonly identityCases: Map<number, IdentityCase>;
  readonly caseFiles: Map<string, CaseFile>;
  /** Those alone that the events record: a notice never changes. */
  readonly notices: Map<number, Notice>;
  /** Those alone that the events changed. */
  readonly spells: Map<number, CustodySpell>;
}

const projectBatch = async (database: LedgerDatabase, events: readonly RecordedEvent[]): Promise<void> => {
  const before = await load(database, events);
  const after = evolve(before, events);
  if (after.station !== before.station) await writeStation(database, after.station);
  await writePeople(database, changed(before.people, after.people));
  const sheets = changed(before.modelSheets, after.modelSheets);
  await writeModelSheets(database, sheets);
  const devices = changed(before.devices, after.devices);
  const isAdopted = events.some(({ event }) => event.type === 'program.adopted');
  const decidesOnDates = devices.length > 0 || sheets.length > 0 || isAdopted;
  const program = decidesOnDates ? await dueProgramIn(database) : tradeProgram;
  await writeDevices(database, devices, program);
  await writeOtherCodes(database, before.devices, after.devices);
  await writeInspections(database, changed(before.inspections, after.inspections));
  await writeIdentityCases(database, changed(before.identityCases, after.identityCases));
  await writeCaseFiles(database, changed(before.caseFiles, after.caseFiles));
  await writeNotices(database, [...after.notices.values()]);
  await writeSpells(database, [...after.spells.values()]);
  for (const sheet of sheets)
    if (bearsOnDevices(before.modelSheets.get(sheet.modelSheetId), sheet))
      await rewriteDevices(database, sheet, program);
  if (isAdopted) await recomputeDueDates(database, program, batchSize);
};

const load = async (database: LedgerDatabase, events: readonly RecordedEvent[]): Promise<Aggregates> => {
  const touched = events.map(({ event }) => touchedBy(event));
  const distinct = <Key>(keys: readonly (Key | undefined)[]): Key[] => [
    ...new Set(keys.filter((key) => key !== undefined)),
  ];
  const stations = touched.some(({ station }) => station)
    ? await database.selectFrom('station').select('state').execute()
    : [];
  const personIds = distinct(touched.map(({ personId }) => personId));
  const people =
    personIds.length === 0
      ? []
      : await database.selectFrom('person').select('state').where('person_id', 'in', personIds).execute();
  const benchIds = distinct(touched.map(({ benchId }) => benchId));
  const devices =
    benchIds.length === 0
      ? []
      : await database.selectFrom('device').select('state').where('bench_id', 'in', benchIds).execute();
  const sheetIds = distinct(touched.map(({ modelSheetId }) => modelSheetId));
  const modelSheets = sheetIds.length === 0 ? [] : await modelSheetRows(database, sheetIds);
  const numbers = distinct(touched.map(({ inspection }) => inspection));
  const inspections =
    numbers.length === 0
      ? []
      : await database.selectFrom('inspection').select('state').where('inspection', 'in', numbers).execute();
  const caseNumbers = distinct(touched.map(({ identityCase }) => identityCase));
  const identityCases =
    caseNumbers.length === 0
      ? []
      : await database
          .selectFrom('identity_case')
          .select('state')
          .where('identity_case', 'in', caseNumbers)
          .execute();
  const caseFiles = await caseFilesWith(database, distinct(touched.map(({ caseFile }) => caseFile)));
  return {
    station: stations.map(stateOf<Station>)[0],
    people: keyed(people.map(stateOf<Person>), ({ personId }) => personId),
    modelSheets: keyed(modelSheets.map(stateOf<ModelSheet>), ({ modelSheetId }) => modelSheetId),
    devices: keyed(devices.map(stateOf<Device>), ({ benchId }) => benchId),
    inspections: keyed(inspections.map(stateOf<Inspection>), ({ inspection }) => inspection),
    identityCases: keyed(identityCases.map(stateOf<IdentityCase>), ({ identityCase }) => identityCase),
    caseFiles: keyed(caseFiles, keyOf),
    notices: new Map(),
    spells: new Map(),
  };
};

const modelSheetRows = (database: LedgerDatabase, sheetIds: readonly string[]) =>
  database.selectFrom('model_sheet').select('state').where('model_sheet_id', 'in', sheetIds).execute();

const keyed = <Key, Value>(values: readonly Value[], keyOf: (value: Value) => Key): Map<Key, Value> =>
  new Map(values.map((value) => [keyOf(value), value]));

const evolve = (before: Aggregates, events: readonly RecordedEvent[]): Aggregates => {
  const after: Aggregates = {
    station: before.station,
    people: new Map(before.people),
    modelSheets: new Map(before.modelSheets),
    devices: new Map(before.devices),
    inspections: new Map(before.inspections),
    identityCases: new Map(before.identityCases),
    caseFiles: new Map(before.caseFiles),
    notices: new Map(),
    spells: new Map(),
  };
  for (const recorded of events) {
    const touched = touchedBy(recorded.event);
    const { station, personId, modelSheetId, benchId, inspection, identityCase, caseFile, notice } = touched;
    if (station) after.station = evolveStation(after.station, recorded);
    evolveIn(after.people, personId, recorded, evolvePerson);
    evolveIn(after.modelSheets, modelSheetId, recorded, evolveModelSheet);
    const was = benchId && after.devices.get(benchId);
    evolveIn(after.devices, benchId, recorded, evolveDevice);
    const is = benchId && after.devices.get(benchId);
    for (const spell of changedSpells(was, is, recorded)) after.spells.set(spell.spell, spell);
    evolveIn(after.inspections, inspection, recorded, evolveInspection);
    evolveIn(after.identityCases, identityCase, recorded, evolveIdentityCase);
    evolveIn(after.caseFiles, caseFile, recorded, evolveCaseFile);
    evolveIn(after.notices, notice, recorded, evolveNotice);
  }
  return after;
};

const changed = <Key, Value>(before: ReadonlyMap<Key, Value>, after: ReadonlyMap<Key, Value>): Value[] =>
  [...after].filter(([key, value]) => before.get(key) !== value).map(([, value]) => value);

const writeStation = async (database: LedgerDatabase, station: Station | undefined): Promise<void> => {
  if (station === undefined) return;
  await database
    .replaceInto('station')
    .values({ id: 1, state: canonicalJson(station) })
    .execute();
};

const writePeople = async (database: LedgerDatabase, people: readonly Person[]): Promise<void> => {
  if (people.length === 0) return;
  await database
    .insertInto('person')
    .values(
      people.map((person) => ({
        person_id: person.personId,
        badge: person.badge.trim(),
        name_key: compareKey(person.name),
        state: canonicalJson(person),
      })),
    )
    .onConflict((conflict) =>
      conflict.column('person_id').doUpdateSet(({ ref }) => ({
        badge: ref('excluded.badge'),
        name_key: ref('excluded.name_key'),
        state: ref('excluded.state'),
      })),
    )
    .execute();
};

const writeModelSheets = async (database: LedgerDatabase, sheets: readonly ModelSheet[]): Promise<void> => {
  if (sheets.length === 0) return;
  await database
    .insertInto('model_sheet')
    .values(
      sheets.map((sheet) => ({
        model_sheet_id: sheet.modelSheetId,
        manufacturer_key: compareKey(sheet.manufacturer),
        model_key: compareKey(sheet.model),
        state: canonicalJson(sheet),
      })),
    )
    .onConflict((conflict) =>
      conflict.column('model_sheet_id').doUpdateSet(({ ref }) => ({
        manufacturer_key: ref('excluded.manufacturer_key'),
        model_key: ref('excluded.model_key'),
        state: ref('excluded.state'),
      })),
    )
    .execute();
};

const writeDevices = async (
  database: LedgerDatabase,
  devices: readonly Device[],
  program: DueProgram,
): Promise<void> => {
  if (devices.length === 0) return;
  const sheetIds = [...new Set(devices.map(({ modelSheetId }) => modelSheetId))];
  const sheets = keyed(
    (await modelSheetRows(database, sheetIds)).map(stateOf<ModelSheet>),
    (sheet) => sheet.modelSheetId,
  );
  await database
    .insertInto('device')
    .values(devices.map((device) => deviceRow(device, sheets.get(device.modelSheetId), program)))
    .onConflict((conflict) =>
      conflict.column('bench_id').doUpdateSet(({ ref }) => ({
        model_sheet_id: ref('excluded.model_sheet_id'),
        manufacturer_key: ref('excluded.manufacturer_key'),
        model_key: ref('excluded.model_key'),
        serial_key: ref('excluded.serial_key'),
        standing: ref('excluded.standing'),
        due_on: ref('excluded.due_on'),
        due_what: ref('excluded.due_what'),
        unproved_tag: ref('excluded.unproved_tag'),
        custody_user: ref('excluded.custody_user'),
        expected_on: ref('excluded.expected_on'),
        stored_at: ref('excluded.stored_at'),
        search: ref('excluded.search'),
        state: ref('excluded.state'),
      })),
    )
    .execute();
};

const deviceRow = (
  device: Device,
  sheet: ModelSheet | undefined,
  program: DueProgram,
): Insertable<LedgerTables['device']> => {
  const { manufacturer, model } = sheet ?? { manufacturer: '', model: '' };
  const codes = device.otherCodes.map(({ code }) => code);
  return {
    bench_id: device.benchId,
    model_sheet_id: device.modelSheetId,
    manufacturer_key: compareKey(manufacturer),
    model_key: compareKey(model),
    serial_key: compareKey(device.serial),
    standing: device.standing,
    ...dueColumns(device, sheet, program),
    unproved_tag: hasUnprovedTag(device) ? 1 : 0,
    custody_user: device.custody?.userId ?? null,
    expected_on: device.custody?.lostOn === undefined ? (device.custody?.expectedOn ?? null) : null,
    stored_at: device.stored?.place ?? null,
    search: searchKeys([device.benchId, manufacturer, model, device.serial, ...codes]),
    state: canonicalJson(device),
  };
};

/** A code that another device holds already violates the primary key, and so nothing is recorded. */
const writeOtherCodes = async (
  database: LedgerDatabase,
  before: ReadonlyMap<Device['benchId'], Device>,
  after: ReadonlyMap<Device['benchId'], Device>,
): Promise<void> => {
  const bound = [...after.values()].flatMap(({ benchId, otherCodes }) =>
    otherCodes
      .slice(before.get(benchId)?.otherCodes.length ?? 0)
      .map(({ code }) => ({ code: code.trim(), bench_id: benchId })),
  );
  for (let start = 0; start < bound.length; start += batchSize) {
    await database
      .insertInto('other_code')
      .values(bound.slice(start, start + batchSize))
      .execute();
  }
};

const writeInspections = async (
  database: LedgerDatabase,
  inspections: readonly Inspection[],
): Promise<void> => {
  if (inspections.length === 0) return;
  await database
    .insertInto('inspection')
    .values(
      inspections.map((inspection) => ({
        inspection: inspection.inspection,
        bench_id: inspection.benchId,
        phase: inspection.state,
        state: canonicalJson(inspection),
      })),
    )
    .onConflict((conflict) =>
      conflict.column('inspection').doUpdateSet(({ ref }) => ({
        bench_id: ref('excluded.bench_id'),
        phase: ref('excluded.phase'),
        state: ref('excluded.state'),
      })),
    )
    .execute();
};

const writeIdentityCases = async (
  database: LedgerDatabase,
  identityCases: readonly IdentityCase[],
): Promise<void> => {
  if (identityCases.length === 0) return;
  await database
    .insertInto('identity_case')
    .values(
      identityCases.map((identity) => ({
        identity_case: identity.identityCase,
        phase: identity.state,
        state: canonicalJson(identity),
      })),
    )
    .onConflict((conflict) =>
      conflict
        .column('identity_case')
        .doUpdateSet(({ ref }) => ({ phase: ref('excluded.phase'), state: ref('excluded.state') })),
    )
    .execute();
};

const writeSpells = async (database: LedgerDatabase, spells: readonly CustodySpell[]): Promise<void> => {
  if (spells.length === 0) return;
  await database
    .insertInto('custody_spell')
    .values(
      spells.map((spell) => ({
        spell: spell.spell,
        bench_id: spell.benchId,
        user_id: spell.userId,
        state: canonicalJson(spell),
      })),
    )
    .onConflict((conflict) =>
      conflict.column('spell').doUpdateSet(({ ref }) => ({ state: ref('excluded.state') })),
    )
    .execute();
};

const bearsOnDevices = (before: ModelSheet | undefined, sheet: ModelSheet): boolean =>
  before?.manufacturer !== sheet.manufacturer ||
  before.model !== sheet.model ||
  before.manufacturerIntervalMonths !== sheet.manufacturerIntervalMonths ||
  before.manufacturerRevalidationMonths !== sheet.manufacturerRevalidationMonths ||
  before.serviceLife?.years !== sheet.serviceLife?.years ||
  before.serviceLife?.from !== sheet.serviceLife?.from;

/** The devices of a model sheet are ordered, found and due by what it says, so they follow when it changes. */
const rewriteDevices = async (
  database: LedgerDatabase,
  sheet: ModelSheet,
  program: DueProgram,
): Promise<void> => {
  for (let last = '', more = true; more; ) {
    const rows = await database
      .selectFrom('device')
      .select(['bench_id', 'state'])
      .where('model_sheet_id', '=', sheet.modelSheetId)
      .where('bench_id', '>', last)
      .orderBy('bench_id')
      .limit(batchSize)
      .execute();
    await writeDevices(database, rows.map(stateOf<Device>), program);
    last = rows.at(-1)?.bench_id ?? last;
    more = rows.length === batchSize;
  }
};
