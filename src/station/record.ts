/** Records the events of a decision, made now, by the person of the session. */
import type { Decision } from '../domain/decide/decision.ts';
import type { Occasion, RecordedEvent } from '../domain/event.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import type { LedgerReader, SideWriter } from '../ledger/ledger.ts';
import { stationIn } from './lookup.ts';
import type { OperationContext } from './operation.ts';
import { holdingRecalled } from './recall/hold-recalled.ts';

/**
 * Refuses where there is no station yet; `decide` is told the occasion that the events will carry. Whatever device comes to
 * be known by them and is meant by a manufacturer's notice is held in the same breath.
 */
export const record = async (
  context: OperationContext,
  decide: (reader: LedgerReader, occasion: Occasion) => Promise<Decision>,
  alongside?: (writer: SideWriter) => Promise<void>,
): Promise<readonly RecordedEvent[] | Refusal> => {
  const station = await context.ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const occasion = context.occasion(station);
  return context.ledger.append(
    occasion,
    async (reader) => holdingRecalled(reader, await decide(reader, occasion), occasion, context.rules),
    alongside,
  );
};
