/** The rows of fall cases, return batches, repair terms and what returns are planned with, as the projector reads and writes them. */
import { type CaseFile, keyOf } from '../../domain/held/case-file.ts';
import { canonicalJson } from '../canonical-json.ts';
import type { LedgerDatabase } from './schema.ts';
import { stateOf } from './state.ts';

export const caseFilesWith = async (
  database: LedgerDatabase,
  keys: readonly string[],
): Promise<readonly CaseFile[]> => {
  if (keys.length === 0) return [];
  const rows = await database
    .selectFrom('case_file')
    .select('state')
    .where('case_file', 'in', keys)
    .execute();
  return rows.map(stateOf<CaseFile>);
};

export const writeCaseFiles = async (database: LedgerDatabase, files: readonly CaseFile[]): Promise<void> => {
  if (files.length === 0) return;
  await database
    .insertInto('case_file')
    .values(
      files.map((file) => ({
        case_file: keyOf(file),
        kind: file.kind,
        number: 'number' in file ? file.number : null,
        phase: 'phase' in file ? file.phase : 'recorded',
        state: canonicalJson(file),
      })),
    )
    .onConflict((conflict) =>
      conflict
        .column('case_file')
        .doUpdateSet(({ ref }) => ({ phase: ref('excluded.phase'), state: ref('excluded.state') })),
    )
    .execute();
};
