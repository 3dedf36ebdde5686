/** The due dates of devices as columns: computed with each device, and again for all when the program changes. */
import { type SqlBool, sql } from 'kysely';
import type { CalendarDate } from '../../domain/brand.ts';
import type { Device } from '../../domain/device.ts';
import { dueDatesOf } from '../../domain/due/due-dates.ts';
import type { DueProgram } from '../../domain/due/due-rules.ts';
import { tradeProgram } from '../../domain/due/trade-program.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import type { LedgerDatabase, LedgerTables } from './schema.ts';
import { stateOf } from './state.ts';

/** Read back from the table, where it is whatever the run of events did to it. */
export const dueProgramIn = async (database: LedgerDatabase): Promise<DueProgram> => {
  const row = await database
    .selectFrom('station')
    .select(sql<string | null>`state -> '$.program'`.as('program'))
    .executeTakeFirst();
  return row?.program == null ? tradeProgram : (JSON.parse(row.program) as DueProgram);
};

export const dueColumns = (
  device: Device,
  sheet: ModelSheet | undefined,
  program: DueProgram,
): Pick<LedgerTables['device'], 'due_on' | 'due_what'> => {
  const due = sheet === undefined ? undefined : dueDatesOf(device, sheet, program)[0];
  return { due_on: due?.on ?? null, due_what: due?.what ?? null };
};

/** A device as it stands, with the due date that follows from everything else too. */
export const withDue = (device: Device, due: Pick<LedgerTables['device'], 'due_on' | 'due_what'>): Device =>
  due.due_on === null || due.due_what === null
    ? device
    : { ...device, dueOn: due.due_on as CalendarDate, dueWhat: due.due_what };

/** With the plus sign SQLite goes through the devices by bench ID, and does not sort those in service again for each batch. */
const isInService = sql<SqlBool>`+standing = 'in service'`;

/** Of every device in service; only what changes is written. */
export const recomputeDueDates = async (
  database: LedgerDatabase,
  program: DueProgram,
  batchSize: number,
): Promise<void> => {
  const all = await database.selectFrom('model_sheet').select('state').execute();
  const sheets = new Map(all.map(stateOf<ModelSheet>).map((sheet) => [sheet.modelSheetId, sheet]));
  for (let last = '', more = true; more; ) {
    const rows = await database
      .selectFrom('device')
      .select(['bench_id', 'due_on', 'due_what', 'state'])
      .where(isInService)
      .where('bench_id', '>', last)
      .orderBy('bench_id')
      .limit(batchSize)
      .execute();
    const changes = rows.flatMap((row) => {
      const device = stateOf<Device>(row);
      const now = dueColumns(device, sheets.get(device.modelSheetId), program);
      return now.due_on === row.due_on && now.due_what === row.due_what
        ? []
        : [{ benchId: row.bench_id, ...now }];
    });
    if (changes.length > 0) {
      const changed = JSON.stringify(changes);
      await sql`
        update device set due_on = now.value ->> 'due_on', due_what = now.value ->> 'due_what'
        from json_each(${changed}) as now where device.bench_id = now.value ->> 'benchId'
      `.execute(database);
    }
    last = rows.at(-1)?.bench_id ?? last;
    more = rows.length === batchSize;
  }
};
