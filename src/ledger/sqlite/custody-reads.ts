/** The reads of who had a device when, and of the places in store. */
import type { CustodySpell } from '../../domain/custody/custody.ts';
import type { CustodyQuery } from '../ledger.ts';
import type { LedgerDatabase } from './schema.ts';
import { stateOf } from './state.ts';

/** The latest first. */
export const spellsIn = async (
  database: LedgerDatabase,
  { limit, offset, ...of }: CustodyQuery,
): Promise<readonly CustodySpell[]> => {
  const spells = database.selectFrom('custody_spell').select('state');
  const rows = await ('benchId' in of
    ? spells.where('bench_id', '=', of.benchId)
    : spells.where('user_id', '=', of.userId)
  )
    .orderBy('spell', 'desc')
    .limit(limit)
    .offset(offset)
    .execute();
  return rows.map(stateOf<CustodySpell>);
};

export const placesIn = async (
  database: LedgerDatabase,
): Promise<readonly { readonly place: string; readonly devices: number }[]> => {
  const rows = await database
    .selectFrom('device')
    .select(({ fn }) => ['stored_at', fn.countAll<number>().as('devices')])
    .where('stored_at', 'is not', null)
    .groupBy('stored_at')
    .orderBy('stored_at')
    .execute();
  return rows.map(({ stored_at, devices }) => ({ place: stored_at ?? '', devices }));
};
