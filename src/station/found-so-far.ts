/** What an open inspection had found, for a device that is taken out of service in the middle of it. */
import { factsOf } from '../domain/decide/inspection.ts';
import { answersOf } from '../domain/inspection.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { type Reason, reasonsWhenBrokenOff } from '../domain/verdict.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { caseIn } from './lookup.ts';
import type { Rules } from './rules.ts';

/** Nothing where no inspection is open. */
export const foundSoFar = async (
  reader: LedgerReader,
  inspection: number | undefined,
  rules: Rules,
): Promise<readonly Reason[] | Refusal> => {
  if (inspection === undefined) return [];
  const open = await caseIn(reader, inspection, rules);
  if (isRefusal(open)) return open;
  return reasonsWhenBrokenOff(
    open.procedure,
    answersOf(open.inspection),
    factsOf(open.modelSheet),
    open.lengthUnit,
  );
};
