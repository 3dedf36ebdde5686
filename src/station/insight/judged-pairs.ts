/** The signed pairs of blind inspections, as the statistics see them. */
import type { Inspection } from '../../domain/inspection.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { Judged, JudgedPair } from '../../planning/insight/inspector-agreement.ts';

export const judgedPairs = async (reader: LedgerReader): Promise<readonly JudgedPair[]> => {
  const pairs: JudgedPair[] = [];
  for (const { benchId, first, second } of await reader.caseFiles('reinspection', ['signed'])) {
    const one = judged(await reader.inspection(first));
    const other = second === undefined ? undefined : judged(await reader.inspection(second));
    if (one !== undefined && other !== undefined) pairs.push({ benchId, first: one, second: other });
  }
  return pairs;
};

/** A reason of a check has the key of the check before its last full stop; the other reasons are those of the program. */
const judged = (inspection: Inspection | undefined): Judged | undefined => {
  const verdict = inspection?.signed?.verdict;
  if (inspection === undefined || verdict === undefined || verdict.kind === 'incomplete') return undefined;
  const reasons = verdict.kind === 'pass' ? [] : verdict.reasons;
  const found = new Set(reasons.map(({ key }) => key.slice(0, key.lastIndexOf('.'))));
  const checks = new Map(
    Object.keys(inspection.answers).map((check) => [check, found.has(check) ? 'removes' : 'good'] as const),
  );
  const isRemoved = [...checks.values()].includes('removes');
  return { verdict: isRemoved ? 'remove from service' : 'pass', checks };
};
