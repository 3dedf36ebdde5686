/** Plans the bench of the station from its record, once for every state of the record and day. */
import { setImmediate as othersFirst } from 'node:timers/promises';
import { assumedBenchCapacity, type BenchCapacity } from '../../domain/bench-capacity.ts';
import type { BenchId, CalendarDate } from '../../domain/brand.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { benchDays } from '../../planning/bench-day.ts';
import { type BenchPlan, benchPlanInSteps, benchPlanPauses } from '../../planning/bench-plan.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { type WorkControl, WorkJobs, type WorkProgress } from '../work-jobs.ts';

/** A year ahead and the day of today. */
const daysAhead = 366;
/** The register is read, then the plan is made between its pauses. */
const steps = 1 + benchPlanPauses + 1;

export interface StationPlan {
  readonly today: CalendarDate;
  readonly capacity: BenchCapacity;
  /** False while no administrator has said what the bench can take in hand. */
  readonly isCapacitySet: boolean;
  readonly plan: BenchPlan;
  /** Devices of the plan that somebody has. */
  readonly out: ReadonlySet<BenchId>;
}

export class BenchPlanner {
  readonly #jobs: WorkJobs<StationPlan>;
  #latest: { readonly of: string; readonly job: number } | undefined;

  /** `onFault` as for any long work. */
  constructor(onFault: (error: unknown) => Promise<Refusal>) {
    this.#jobs = new WorkJobs(1, onFault);
  }

  /**
   * Never older than the record is when it is asked for. Whoever asks while it is made waits for the same one, and all of
   * them are refused with `plan-canceled` where somebody cancels it.
   */
  async plan(context: OperationContext): Promise<StationPlan | Refusal> {
    for (;;) {
      const job = await this.#jobFor(context);
      if (isRefusal(job)) return job;
      await this.#jobs.ended(job);
      const state = this.#jobs.stateOf(job);
      if (state?.state === 'done') return state.outcome;
      if (state?.state === 'refused') return state.refusal;
    }
  }

  /** How far the plan is that is being made; `undefined` where none is. */
  get underWay(): WorkProgress | undefined {
    const state = this.#latest === undefined ? undefined : this.#jobs.stateOf(this.#latest.job);
    return state?.state === 'working' ? (state.progress ?? { done: 0, of: steps }) : undefined;
  }

  /** Ends the plan that is being made, for everybody who waits for it. */
  cancel(): void {
    if (this.#latest !== undefined) this.#jobs.cancel(this.#latest.job);
  }

  async close(): Promise<void> {
    await this.#jobs.close();
  }

  async #jobFor(context: OperationContext): Promise<number | Refusal> {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const today = context.occasion(station).on;
    const { size, rootHash } = await context.ledger.head();
    const of = `${today} ${size} ${rootHash}`;
    const latest = this.#latest;
    const state = latest?.of === of ? this.#jobs.stateOf(latest.job)?.state : undefined;
    if (latest !== undefined && (state === 'working' || state === 'done')) return latest.job;
    const job = this.#jobs.start((control) => planned(context, today, control));
    this.#latest = { of, job };
    return job;
  }
}

const planned = async (
  { ledger }: OperationContext,
  today: CalendarDate,
  { signal, onProgress }: WorkControl,
): Promise<StationPlan | Refusal> => {
  const read = await ledger.read(async (reader) => {
    const station = await stationIn(reader);
    return isRefusal(station) ? station : { station, devices: await reader.devicesToPlan() };
  });
  if (isRefusal(read)) return read;
  const { station, devices } = read;
  const capacity = station.benchCapacity ?? assumedBenchCapacity;
  const making = benchPlanInSteps(devices, benchDays(today, daysAhead, capacity), capacity.mostDaysEarly);
  for (let done = 1; ; done += 1) {
    onProgress({ done, of: steps });
    await othersFirst();
    if (signal.aborted) return refusal('plan-canceled');
    const step = making.next();
    if (step.done !== true) continue;
    return {
      today,
      capacity,
      isCapacitySet: station.benchCapacity !== undefined,
      plan: step.value,
      out: new Set(devices.flatMap(({ benchId, holderId }) => (holderId === undefined ? [] : [benchId]))),
    };
  }
};
