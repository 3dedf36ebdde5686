/** What a device must meet to be in a page of the register, and in a count. */
import { type ExpressionBuilder, type SqlBool, sql } from 'kysely';
import type { DeviceQuery } from '../ledger.ts';
import type { LedgerTables } from './schema.ts';
import { searchWords } from './search.ts';

/** Written out, not as parameters, so that SQLite can use the indexes over just these. */
export const isOut = sql<SqlBool>`custody_user is not null`;
export const isIn = sql<SqlBool>`custody_user is null`;
export const hasUnproved = sql<SqlBool>`unproved_tag = 1`;

export const conditionsOf = (
  { search, standing, dueBefore, unprovedTag, out, returnBefore, storedAt, dueFrom }: DeviceQuery,
  builder: ExpressionBuilder<LedgerTables, 'device'>,
) => [
  ...searchWords(search ?? '').map((word) => builder(sql<number>`instr(search, ${word})`, '>', 0)),
  ...(standing === undefined ? [] : [builder('standing', 'in', standing)]),
  ...(unprovedTag ? [hasUnproved] : []),
  ...(out === false ? [isIn] : out === undefined && returnBefore === undefined ? [] : [isOut]),
  ...(typeof out === 'object' ? [builder('custody_user', '=', out.userId)] : []),
  ...(returnBefore === undefined ? [] : [builder('expected_on', '<', returnBefore)]),
  ...(storedAt === undefined ? [] : [builder('stored_at', '=', storedAt)]),
  ...(dueFrom === undefined
    ? []
    : [builder('standing', '=', 'in service'), builder('due_on', '>=', dueFrom)]),
  ...(dueBefore === undefined
    ? []
    : [builder('standing', '=', 'in service'), builder('due_on', '<', dueBefore)]),
];
