/** The reads of the ledger over its SQLite tables. */
import { type SqlBool, sql } from 'kysely';
import type { BenchId, CalendarDate } from '../../domain/brand.ts';
import type { CustodySpell } from '../../domain/custody/custody.ts';
import type { Device } from '../../domain/device.ts';
import type { RecordedEvent } from '../../domain/event.ts';
import type { Station } from '../../domain/evolve.ts';
import type { CaseFile, CaseFileKind } from '../../domain/held/case-file.ts';
import type { IdentityCase } from '../../domain/identity/identity-case.ts';
import type { EarlierCases } from '../../domain/identity/rank-candidates.ts';
import type { RegisteredDevice } from '../../domain/identity/registered-device.ts';
import type { Inspection } from '../../domain/inspection.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import type { Person } from '../../domain/person.ts';
import type { Notice } from '../../domain/recall/notice.ts';
import type {
  Counts,
  Credential,
  CustodyQuery,
  DeviceQuery,
  DeviceRow,
  DeviceToPlan,
  InspectionQuery,
  LedgerReader,
} from '../ledger.ts';
import { caseFileIn, caseFilesIn, nextCaseFileNumberIn } from './case-file-reads.ts';
import { countOf, countsIn, isOpen } from './counts.ts';
import { placesIn, spellsIn } from './custody-reads.ts';
import { conditionsOf } from './device-conditions.ts';
import { devicesToPlan } from './devices-to-plan.ts';
import { withDue } from './due-columns.ts';
import { recordedFrom } from './event-row.ts';
import { benchIdsAfter, noticesIn } from './notice-rows.ts';
import { registeredDevicesIn } from './registered-devices.ts';
import type { LedgerDatabase } from './schema.ts';
import { compareKey } from './search.ts';
import { signatureConditions, signedOn } from './signature-conditions.ts';
import { stateOf } from './state.ts';

export class SqliteReader implements LedgerReader {
  readonly #database: LedgerDatabase;

  /** `database` is a transaction: every read of it sees the same state. */
  constructor(database: LedgerDatabase) {
    this.#database = database;
  }

  async station(): Promise<Station | undefined> {
    const row = await this.#database.selectFrom('station').select('state').executeTakeFirst();
    return row && stateOf<Station>(row);
  }

  async person(personId: string): Promise<Person | undefined> {
    const row = await this.#database
      .selectFrom('person')
      .select('state')
      .where('person_id', '=', personId)
      .executeTakeFirst();
    return row && stateOf<Person>(row);
  }

  async personByBadge(badge: string): Promise<Person | undefined> {
    const row = await this.#database
      .selectFrom('person')
      .select('state')
      .where('badge', '=', badge.trim())
      .executeTakeFirst();
    return row && stateOf<Person>(row);
  }

  async people(): Promise<readonly Person[]> {
    const rows = await this.#database
      .selectFrom('person')
      .select('state')
      .orderBy('name_key')
      .orderBy('person_id')
      .execute();
    return rows.map(stateOf<Person>);
  }

  async credential(personId: string): Promise<Credential | undefined> {
    const row = await this.#database
      .selectFrom('credential')
      .selectAll()
      .where('person_id', '=', personId)
      .executeTakeFirst();
    return (
      row && {
        personId: row.person_id,
        salt: row.salt,
        hash: row.hash,
        failures: row.failures,
        lockedUntil: row.locked_until,
      }
    );
  }

  async secret(name: string): Promise<string | undefined> {
    const row = await this.#database
      .selectFrom('secret')
      .select('value')
      .where('name', '=', name)
      .executeTakeFirst();
    return row?.value;
  }

  async modelSheet(modelSheetId: string): Promise<ModelSheet | undefined> {
    const row = await this.#database
      .selectFrom('model_sheet')
      .select('state')
      .where('model_sheet_id', '=', modelSheetId)
      .executeTakeFirst();
    return row && stateOf<ModelSheet>(row);
  }

  async modelSheets(): Promise<readonly ModelSheet[]> {
    const rows = await this.#database
      .selectFrom('model_sheet')
      .select('state')
      .orderBy('manufacturer_key')
      .orderBy('model_key')
      .orderBy('model_sheet_id')
      .execute();
    return rows.map(stateOf<ModelSheet>);
  }

  async device(benchId: BenchId): Promise<DeviceRow | undefined> {
    const [row] = await this.#deviceRows([benchId]);
    return row;
  }

  benchIds(after: BenchId | undefined, limit: number): Promise<readonly BenchId[]> {
    return benchIdsAfter(this.#database, after, limit);
  }

  async devicesAfter(after: BenchId | undefined, limit: number): Promise<readonly DeviceRow[]> {
    return this.#deviceRows(await benchIdsAfter(this.#database, after, limit));
  }

  async deviceByCode(code: string): Promise<BenchId | undefined> {
    const row = await this.#database
      .selectFrom('other_code')
      .select('bench_id')
      .where('code', '=', code.trim())
      .executeTakeFirst();
    return row && (row.bench_id as BenchId);
  }

  async devicesBySerial(serial: string, modelSheetId?: string): Promise<readonly BenchId[]> {
    const rows = await this.#database
      .selectFrom('device')
      .select('bench_id')
      .where('serial_key', '=', compareKey(serial))
      .$if(modelSheetId !== undefined, (query) => query.where('model_sheet_id', '=', modelSheetId ?? ''))
      .orderBy('bench_id')
      .execute();
    return rows.map((row) => row.bench_id as BenchId);
  }

  async devices(
    query: DeviceQuery,
  ): Promise<{ readonly rows: readonly DeviceRow[]; readonly total: number }> {
    const matching = this.#database
      .selectFrom('device')
      .where((builder) => builder.and(conditionsOf(query, builder)));
    const page = await matching
      .select('bench_id')
      .orderBy('manufacturer_key')
      .orderBy('model_key')
      .orderBy('serial_key')
      .orderBy('bench_id')
      .limit(query.limit)
      .offset(query.offset)
      .execute();
    const isLastPage = page.length < query.limit && (page.length > 0 || query.offset === 0);
    const total = isLastPage ? query.offset + page.length : await countOf(matching);
    return { rows: await this.#deviceRows(page.map((row) => row.bench_id as BenchId)), total };
  }

  devicesToPlan(): Promise<readonly DeviceToPlan[]> {
    return devicesToPlan(this.#database);
  }

  counts(today: CalendarDate, dueSoonUntil: CalendarDate): Promise<Counts> {
    return countsIn(this.#database, today, dueSoonUntil);
  }

  async inspection(inspection: number): Promise<Inspection | undefined> {
    const row = await this.#database
      .selectFrom('inspection')
      .select('state')
      .where('inspection', '=', inspection)
      .executeTakeFirst();
    return row && stateOf<Inspection>(row);
  }

  async inspectionsOf(benchId: BenchId): Promise<readonly Inspection[]> {
    const rows = await this.#database
      .selectFrom('inspection')
      .select('state')
      .where('bench_id', '=', benchId)
      .orderBy('inspection', 'desc')
      .execute();
    return rows.map(stateOf<Inspection>);
  }

  async signedInspections({ limit, offset, ...query }: InspectionQuery): Promise<readonly Inspection[]> {
    const rows = await this.#database
      .selectFrom('inspection')
      .select('state')
      .where(isSigned)
      .where((builder) => builder.and(signatureConditions(query, builder)))
      .orderBy(signedOn, 'desc')
      .orderBy('inspection', 'desc')
      .limit(limit)
      .offset(offset)
      .execute();
    return rows.map(stateOf<Inspection>);
  }

  async openInspections(): Promise<readonly Inspection[]> {
    const rows = await this.#database
      .selectFrom('inspection')
      .select('state')
      .where(isOpen)
      .orderBy('inspection')
      .execute();
    return rows.map(stateOf<Inspection>);
  }

  async nextInspectionNumber(): Promise<number> {
    const { latest } = await this.#database
      .selectFrom('inspection')
      .select(({ fn }) => fn.max<number | null>('inspection').as('latest'))
      .executeTakeFirstOrThrow();
    return (latest ?? 0) + 1;
  }

  registeredDevices(): Promise<readonly RegisteredDevice[]> {
    return registeredDevicesIn(this.#database);
  }

  async identityCase(identityCase: number): Promise<IdentityCase | undefined> {
    const row = await this.#database
      .selectFrom('identity_case')
      .select('state')
      .where('identity_case', '=', identityCase)
      .executeTakeFirst();
    return row && stateOf<IdentityCase>(row);
  }

  openIdentityCases(): Promise<readonly IdentityCase[]> {
    return this.#identityCases(['open', 'proposed']);
  }

  unrecognisedCases(): Promise<readonly IdentityCase[]> {
    return this.#identityCases(['open', 'proposed', 'unidentified']);
  }

  async #identityCases(phases: readonly IdentityCase['state'][]): Promise<readonly IdentityCase[]> {
    const rows = await this.#database
      .selectFrom('identity_case')
      .select('state')
      .where('phase', 'in', phases)
      .orderBy('identity_case')
      .execute();
    return rows.map(stateOf<IdentityCase>);
  }

  notices(): Promise<readonly Notice[]> {
    return noticesIn(this.#database);
  }

  async closedIdentityCases(): Promise<EarlierCases> {
    const ended = this.#database.selectFrom('identity_case');
    return {
      closed: await countOf(ended.where('phase', 'in', ['taken', 'unidentified'])),
      none: await countOf(ended.where('phase', '=', 'unidentified')),
    };
  }

  async nextIdentityCaseNumber(): Promise<number> {
    const { latest } = await this.#database
      .selectFrom('identity_case')
      .select(({ fn }) => fn.max<number | null>('identity_case').as('latest'))
      .executeTakeFirstOrThrow();
    return (latest ?? 0) + 1;
  }

  caseFile(key: string): Promise<CaseFile | undefined> {
    return caseFileIn(this.#database, key);
  }

  caseFiles<Kind extends CaseFileKind>(
    kind: Kind,
    phases?: readonly string[],
  ): Promise<readonly Extract<CaseFile, { kind: Kind }>[]> {
    return caseFilesIn(this.#database, kind, phases);
  }

  nextCaseFileNumber(kind: CaseFileKind): Promise<number> {
    return nextCaseFileNumberIn(this.#database, kind);
  }

  custodySpells(query: CustodyQuery): Promise<readonly CustodySpell[]> {
    return spellsIn(this.#database, query);
  }

  places(): Promise<readonly { readonly place: string; readonly devices: number }[]> {
    return placesIn(this.#database);
  }

  async size(): Promise<number> {
    const row = await this.#database.selectFrom('tree_head').select('size').executeTakeFirst();
    return row?.size ?? 0;
  }

  async event(seq: number): Promise<RecordedEvent | undefined> {
    const bytes = await this.#eventBytes(seq);
    return bytes && recordedFrom(bytes);
  }

  async eventText(seq: number): Promise<string | undefined> {
    return (await this.#eventBytes(seq))?.toString('utf8');
  }

  async #eventBytes(seq: number): Promise<Buffer | undefined> {
    const row = await this.#database
      .selectFrom('event')
      .select('bytes')
      .where('seq', '=', seq)
      .executeTakeFirst();
    return row?.bytes;
  }

  async signatureOf(inspection: number): Promise<RecordedEvent | undefined> {
    const rows = await this.#database
      .selectFrom('event')
      .select('bytes')
      .where('inspection', '=', inspection)
      .orderBy('seq')
      .execute();
    return rows
      .map(({ bytes }) => recordedFrom(bytes))
      .find(({ event }) => event.type === 'inspection.signed');
  }

  async eventsOf(benchId: BenchId): Promise<readonly RecordedEvent[]> {
    const rows = await this.#database
      .selectFrom('event')
      .select('bytes')
      .where('bench_id', '=', benchId)
      .orderBy('seq')
      .execute();
    return rows.map(({ bytes }) => recordedFrom(bytes));
  }

  /** In the order of the bench IDs given. */
  async #deviceRows(benchIds: readonly BenchId[]): Promise<DeviceRow[]> {
    if (benchIds.length === 0) return [];
    const rows = await this.#database
      .selectFrom('device')
      .innerJoin('model_sheet', 'model_sheet.model_sheet_id', 'device.model_sheet_id')
      .select([
        'device.bench_id',
        'device.state as device',
        'due_on',
        'due_what',
        'model_sheet.state as sheet',
      ])
      .where('device.bench_id', 'in', benchIds)
      .execute();
    const found = new Map(rows.map((row) => [row.bench_id, row]));
    return benchIds.flatMap((benchId) => {
      const row = found.get(benchId);
      return row === undefined
        ? []
        : [
            {
              device: withDue(stateOf<Device>({ state: row.device }), row),
              modelSheet: stateOf<ModelSheet>({ state: row.sheet }),
            },
          ];
    });
  }
}

/** Written out, not as a parameter, so that SQLite can use the index over just these. */
const isSigned = sql<SqlBool>`phase = 'signed'`;
