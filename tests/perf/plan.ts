/** The plan of the bench for fleets of 2,000, 20,000 and 100,000 devices, and how long one step of making it holds the station. */
import { type BenchCapacity, inspectionsIn } from '../../src/domain/bench-capacity.ts';
import { type BenchId, calendarDate } from '../../src/domain/brand.ts';
import { addDays } from '../../src/domain/calendar.ts';
import { benchDays } from '../../src/planning/bench-day.ts';
import { benchPlan, benchPlanInSteps, type PlanDevice } from '../../src/planning/bench-plan.ts';
import { seededRandom } from '../support/seeded-random.ts';
import { type Benchmark, timed } from './measurement.ts';

const today = calendarDate('2026-03-10');

/** A year's inspections of which two in three fall into one quarter: the year that has to be levelled. */
const fleetOf = (size: number): readonly PlanDevice[] => {
  const random = seededRandom(size);
  return Array.from({ length: size }, (_, index) => {
    const ahead = random.next() < 0.66 ? random.whole(90, 180) : random.whole(-10, 365);
    const dueOn = addDays(today, ahead);
    return {
      benchId: `D${index}` as BenchId,
      dueOn,
      lastInspectedOn: addDays(dueOn, -365),
      ...(random.next() < 0.2 ? { outUntil: addDays(today, random.whole(0, 60)) } : {}),
    };
  });
};

/** Room for about one and a half times the fleet in a year. */
const capacityFor = (size: number): BenchCapacity => {
  const hours = Math.ceil((size * 1.5) / 260 / 2);
  return {
    hours: {
      monday: hours,
      tuesday: hours,
      wednesday: hours,
      thursday: hours,
      friday: hours,
      saturday: 0,
      sunday: 0,
    },
    minutesPerInspection: 30,
    closures: [{ from: addDays(today, 120), until: addDays(today, 133) }],
    mostDaysEarly: 60,
  };
};

const longestStepOf = (fleet: readonly PlanDevice[], capacity: BenchCapacity): number => {
  const steps = benchPlanInSteps(fleet, benchDays(today, 366, capacity), capacity.mostDaysEarly);
  let longest = 0;
  for (let isDone = false; !isDone; ) {
    const started = performance.now();
    isDone = steps.next().done === true;
    longest = Math.max(longest, performance.now() - started);
  }
  return longest;
};

export const peer = 'none: by the clock alone';

export const benchmark: Benchmark = async () => {
  const figures = [];
  for (const [size, budget] of [
    [2_000, 2_000],
    [20_000, undefined],
    [100_000, undefined],
  ] as const) {
    const fleet = fleetOf(size);
    const capacity = capacityFor(size);
    const { medianMs, longestMs, noise } = await timed(5, () =>
      benchPlan(fleet, benchDays(today, 366, capacity), capacity.mostDaysEarly),
    );
    const plan = benchPlan(fleet, benchDays(today, 366, capacity), capacity.mostDaysEarly);
    if (plan.planned.length === 0 || inspectionsIn(1, capacity) === 0)
      throw new Error('Nothing was planned.');
    const name = `${size.toLocaleString('en')} devices planned for a year`;
    figures.push(
      { name: `${name}, median`, value: medianMs, unit: 'ms' as const, noise },
      {
        name: `${name}, longest of five`,
        value: longestMs,
        unit: 'ms' as const,
        ...(budget === undefined ? {} : { budget }),
      },
      {
        name: `${name}, longest step without a pause`,
        value: longestStepOf(fleet, capacity),
        unit: 'ms' as const,
      },
    );
  }
  return figures;
};
