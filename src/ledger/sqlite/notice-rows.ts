/** The rows of the manufacturers' notices, and the register as it is held against one. */
import type { BenchId } from '../../domain/brand.ts';
import type { Notice } from '../../domain/recall/notice.ts';
import { canonicalJson } from '../canonical-json.ts';
import type { LedgerDatabase } from './schema.ts';
import { stateOf } from './state.ts';

export const writeNotices = async (database: LedgerDatabase, notices: readonly Notice[]): Promise<void> => {
  if (notices.length === 0) return;
  await database
    .replaceInto('notice')
    .values(notices.map((notice) => ({ notice: notice.notice, state: canonicalJson(notice) })))
    .execute();
};

export const noticesIn = async (database: LedgerDatabase): Promise<readonly Notice[]> => {
  const rows = await database.selectFrom('notice').select('state').orderBy('notice', 'desc').execute();
  return rows.map(stateOf<Notice>);
};

/** At most `limit` bench IDs after one, in their order. */
export const benchIdsAfter = async (
  database: LedgerDatabase,
  after: BenchId | undefined,
  limit: number,
): Promise<readonly BenchId[]> => {
  const rows = await database
    .selectFrom('device')
    .select('bench_id')
    .where('bench_id', '>', after ?? '')
    .orderBy('bench_id')
    .limit(limit)
    .execute();
  return rows.map(({ bench_id }) => bench_id as BenchId);
};
