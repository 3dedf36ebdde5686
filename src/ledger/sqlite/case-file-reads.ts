/** The reads of fall cases, return batches and repair terms. */
import type { CaseFile, CaseFileKind } from '../../domain/held/case-file.ts';
import type { LedgerDatabase } from './schema.ts';
import { stateOf } from './state.ts';

export const caseFileIn = async (database: LedgerDatabase, key: string): Promise<CaseFile | undefined> => {
  const row = await database
    .selectFrom('case_file')
    .select('state')
    .where('case_file', '=', key)
    .executeTakeFirst();
  return row && stateOf<CaseFile>(row);
};

/** The newest first. */
export const caseFilesIn = async <Kind extends CaseFileKind>(
  database: LedgerDatabase,
  kind: Kind,
  phases: readonly string[] | undefined,
): Promise<readonly Extract<CaseFile, { kind: Kind }>[]> => {
  const rows = await database
    .selectFrom('case_file')
    .select('state')
    .where('kind', '=', kind as CaseFileKind)
    .$if(phases !== undefined, (query) => query.where('phase', 'in', phases ?? []))
    .orderBy('number', 'desc')
    .orderBy('case_file')
    .execute();
  return rows.map(stateOf<Extract<CaseFile, { kind: Kind }>>);
};

export const nextCaseFileNumberIn = async (database: LedgerDatabase, kind: CaseFileKind): Promise<number> => {
  const { latest } = await database
    .selectFrom('case_file')
    .select(({ fn }) => fn.max<number | null>('number').as('latest'))
    .where('kind', '=', kind)
    .executeTakeFirstOrThrow();
  return (latest ?? 0) + 1;
};
