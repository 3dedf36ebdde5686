/** Plans the bench of the station from its record, once for every state of the record and day. */
import { assumedBenchCapacity, type BenchCapacity } from '../../domain/bench-capacity.ts';
import type { CalendarDate } from '../../domain/brand.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import { benchDays } from '../../planning/bench-day.ts';
import { type BenchPlan, benchPlan } from '../../planning/bench-plan.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';

/** A year ahead and the day of today. */
const daysAhead = 366;

export interface StationPlan {
  readonly today: CalendarDate;
  readonly capacity: BenchCapacity;
  /** False while no administrator has said what the bench can take in hand. */
  readonly isCapacitySet: boolean;
  readonly plan: BenchPlan;
}

export class BenchPlanner {
  #latest: { readonly of: string; readonly made: Promise<StationPlan | Refusal> } | undefined;

  /** Never older than the record is when it is asked for. */
  async plan(context: OperationContext): Promise<StationPlan | Refusal> {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const today = context.occasion(station).on;
    const { size, rootHash } = await context.ledger.head();
    const of = `${today} ${size} ${rootHash}`;
    if (this.#latest?.of !== of) this.#latest = { of, made: planned(context, today) };
    const latest = this.#latest;
    return latest.made.catch((error: unknown) => {
      if (this.#latest === latest) this.#latest = undefined;
      throw error;
    });
  }
}

const planned = ({ ledger }: OperationContext, today: CalendarDate): Promise<StationPlan | Refusal> =>
  ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const capacity = station.benchCapacity ?? assumedBenchCapacity;
    const days = benchDays(today, daysAhead, capacity);
    return {
      today,
      capacity,
      isCapacitySet: station.benchCapacity !== undefined,
      plan: benchPlan(await reader.devicesToPlan(), days, capacity.mostDaysEarly),
    };
  });
