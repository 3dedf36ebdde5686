/** What an operation upon a held device answers with: the device as it is then. */
import type { BenchId } from '../domain/brand.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { type HeldView, heldView } from './held-view.ts';
import { deviceIn, stationIn } from './lookup.ts';
import type { OperationContext } from './operation.ts';
import { inForceIn } from './program-in.ts';

export const showHeld = (
  context: OperationContext,
  benchId: BenchId,
): Promise<{ readonly held: HeldView } | Refusal> =>
  context.ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const row = await deviceIn(reader, benchId);
    if (isRefusal(row)) return row;
    const { rules } = context;
    const inForce = await inForceIn(reader, rules);
    return { held: await heldView(row, { reader, rules, inForce, today: context.occasion(station).on }) };
  });
