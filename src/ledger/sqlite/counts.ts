/** The numbers of the day, counted over the register. */
import { type SelectQueryBuilder, type SqlBool, sql } from 'kysely';
import type { CalendarDate } from '../../domain/brand.ts';
import type { Standing } from '../../domain/device.ts';
import type { Counts } from '../ledger.ts';
import { hasUnproved, isOut } from './device-conditions.ts';
import type { LedgerDatabase, LedgerTables } from './schema.ts';

/** Written out, not as a parameter, so that SQLite can use the index over just these. */
export const isOpen = sql<SqlBool>`phase = 'open'`;

export const countsIn = async (
  database: LedgerDatabase,
  today: CalendarDate,
  dueSoonUntil: CalendarDate,
): Promise<Counts> => {
  const rows = await database
    .selectFrom('device')
    .select(({ fn }) => ['standing', fn.countAll<number>().as('count')])
    .groupBy('standing')
    .execute();
  const of = (...standings: readonly Standing[]) =>
    rows.filter(({ standing }) => standings.includes(standing)).reduce((sum, { count }) => sum + count, 0);
  const inService = database.selectFrom('device').where('standing', '=', 'in service');
  const inTime = inService.where('due_on', '>=', today);
  return {
    devices: rows.reduce((sum, { count }) => sum + count, 0),
    inService: of('in service'),
    neverInspected: of('new'),
    overdue: await countOf(inService.where('due_on', '<', today)),
    dueSoon: await countOf(inService.where('due_on', '>=', today).where('due_on', '<=', dueSoonUntil)),
    held: of('quarantined', 'at manufacturer'),
    unprovedTags: await countOf(database.selectFrom('device').where(hasUnproved)),
    out: await countOf(database.selectFrom('device').where(isOut)),
    // The few that are out are looked up; all others are counted in the index alone.
    ready: (await countOf(inTime)) - (await countOf(inTime.where(isOut))),
    overdueReturns: await countOf(
      database.selectFrom('device').where(isOut).where('expected_on', '<', today),
    ),
    openInspections: await countOf(database.selectFrom('inspection').where(isOpen)),
  };
};

export const countOf = async <Table extends keyof LedgerTables>(
  matching: SelectQueryBuilder<LedgerTables, Table, object>,
): Promise<number> => {
  const { count } = await matching
    .select(({ fn }) => fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow();
  return count;
};
