/** Invented fleets to plan for: working days with closures, devices due all over them, some out on jobs. */
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { type CalendarDate, calendarDate } from '../../src/domain/brand.ts';
import { addDays } from '../../src/domain/calendar.ts';
import type { BenchDay, PlannedJob, PlanRequest } from '../../src/planning/level-plan.ts';
import { seededRandom } from '../support/seeded-random.ts';

export const today = calendarDate('2026-03-02');

export interface FleetShape {
  readonly devices: number;
  readonly calendarDays: number;
  /** Inspections that an open day takes, at most. */
  readonly mostADay: number;
  readonly mostDaysEarly: number;
}

/** Two days in seven are closed, and of the others one in twelve. */
export const randomFleet = (
  seed: number,
  { devices, calendarDays, mostADay, mostDaysEarly }: FleetShape,
): PlanRequest => {
  const random = seededRandom(seed);
  const days = Array.from({ length: calendarDays }, (_, day): BenchDay => {
    const isClosed = day % 7 > 4 || random.whole(1, 12) === 1;
    return { on: addDays(today, day), inspections: isClosed ? 0 : random.whole(1, mostADay) };
  }).filter(({ inspections }) => inspections > 0);
  const jobs = Array.from({ length: devices }, (_, index): PlannedJob => {
    const dueOn = addDays(today, random.whole(-6, calendarDays - 1));
    const out: CalendarDate | undefined =
      random.whole(1, 5) === 1 ? addDays(today, random.whole(0, calendarDays - 1)) : undefined;
    return { benchId: benchIdFrom(digits(index)), dueOn, ...(out === undefined ? {} : { outUntil: out }) };
  });
  return { today, jobs, days, mostDaysEarly };
};

const digits = (index: number): number[] =>
  Array.from({ length: 6 }, (_, place) => Math.floor(index / 32 ** place) % 32);
