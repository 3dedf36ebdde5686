/** What every inspection of a device saw along its lifeline. */
import type { BenchId } from '../domain/brand.ts';
import { type LifelineInspection, lifelineInspection } from '../domain/lifeline/lifeline-inspection.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import type { Rules } from './rules.ts';

/** Newest first; refused where a procedure that an inspection was made with is not known. */
export const recordedLifeline = async (
  reader: LedgerReader,
  rules: Rules,
  benchId: BenchId,
): Promise<readonly LifelineInspection[] | Refusal> => {
  const along: LifelineInspection[] = [];
  for (const inspection of await reader.inspectionsOf(benchId)) {
    const procedure = rules.procedureOf(inspection.procedure);
    if (isRefusal(procedure)) return procedure;
    along.push(lifelineInspection(inspection, procedure));
  }
  return along;
};
