/** What an operation upon a fall case answers with: the case as it is then. */
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { fallCaseIn } from './case-file-in.ts';
import { type FallCaseView, fallCaseView } from './held-view.ts';
import type { OperationContext } from './operation.ts';
import { namesOf } from './views.ts';

export const showFallCase = (
  context: OperationContext,
  fallCase: number,
): Promise<{ readonly fallCase: FallCaseView } | Refusal> =>
  context.ledger.read(async (reader) => {
    const file = await fallCaseIn(reader, fallCase);
    return isRefusal(file) ? file : { fallCase: fallCaseView(file, await namesOf(reader)) };
  });
