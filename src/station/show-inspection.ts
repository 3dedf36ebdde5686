/** The view of an inspection as it stands now, for every operation that ends by showing it. */
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { caseIn } from './lookup.ts';
import type { OperationContext } from './operation.ts';
import { type InspectionView, inspectionView } from './views.ts';

export const showInspection = (
  context: OperationContext,
  number: number,
): Promise<{ inspection: InspectionView } | Refusal> =>
  context.ledger.read(async (reader) => {
    const open = await caseIn(reader, number, context.rules);
    if (isRefusal(open)) return open;
    const today = context.occasion(open.station).on;
    return { inspection: await inspectionView(reader, open, today) };
  });
