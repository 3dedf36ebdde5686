/** What a plan of returns from the record is made for, as the record is now. */
import type { Station } from '../../domain/evolve.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { type GatheredReturns, gatherReturns } from './gather-returns.ts';
import { type RecordedInput, recordedInput } from './record-input.ts';

export interface ReturnsNow {
  readonly station: Station;
  readonly gathered: GatheredReturns;
  readonly recorded: RecordedInput;
  /** How many events the record has. */
  readonly size: number;
}

export const returnsNow = (context: OperationContext): Promise<ReturnsNow | Refusal> =>
  context.ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const gathered = await gatherReturns(reader, context.rules, context.occasion(station).on);
    return { station, gathered, recorded: recordedInput(gathered), size: await reader.size() };
  });
