/** Which signed inspections are asked for, in the expressions that their indexes are over. */
import { type ExpressionBuilder, sql } from 'kysely';
import type { InspectionQuery } from '../ledger.ts';
import type { LedgerTables } from './schema.ts';

/** As the indexes over signed inspections have them. */
export const signedOn = sql<string>`json_extract(state, '$.signed.on')`;
const signedBy = sql<string>`json_extract(state, '$.signed.by')`;
const signedVerdict = sql<string>`json_extract(state, '$.signed.verdict.kind')`;

export const signatureConditions = (
  { from, until, personId, verdict, benchId }: Omit<InspectionQuery, 'limit' | 'offset'>,
  builder: ExpressionBuilder<LedgerTables, 'inspection'>,
) => [
  ...(from === undefined ? [] : [builder(signedOn, '>=', from)]),
  ...(until === undefined ? [] : [builder(signedOn, '<=', until)]),
  ...(personId === undefined ? [] : [builder(signedBy, '=', personId)]),
  ...(verdict === undefined ? [] : [builder(signedVerdict, '=', verdict)]),
  ...(benchId === undefined ? [] : [builder('bench_id', '=', benchId)]),
];
