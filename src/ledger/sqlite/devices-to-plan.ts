/** What the plan of the bench needs of each device, out of its columns and as little of its state as that takes. */
import { type SqlBool, sql } from 'kysely';
import type { BenchId, CalendarDate } from '../../domain/brand.ts';
import type { DeviceToPlan } from '../ledger.ts';
import type { LedgerDatabase } from './schema.ts';

export const devicesToPlan = async (database: LedgerDatabase): Promise<readonly DeviceToPlan[]> => {
  const rows = await database
    .selectFrom('device')
    .select([
      'bench_id',
      'due_on',
      'custody_user',
      'expected_on',
      sql<string | null>`json_extract(state, '$.lastInspection.on')`.as('inspected'),
    ])
    .where('standing', 'in', ['new', 'in service'])
    .where(sql<SqlBool>`json_extract(state, '$.custody.lostOn') is null`)
    .execute();
  return rows.map(({ bench_id, due_on, inspected, custody_user, expected_on }) => ({
    benchId: bench_id as BenchId,
    ...(due_on === null ? {} : { dueOn: due_on as CalendarDate }),
    ...(inspected === null ? {} : { lastInspectedOn: inspected as CalendarDate }),
    ...(custody_user === null ? {} : { holderId: custody_user }),
    ...(expected_on === null ? {} : { outUntil: expected_on as CalendarDate }),
  }));
};
