import { describe, expect, test } from 'vitest';
import { type BenchId, calendarDate } from '../../src/domain/brand.ts';
import { addDays } from '../../src/domain/calendar.ts';
import { type LevelPlan, levelPlan, type PlanRequest } from '../../src/planning/level-plan.ts';
import { leastCost, mostInTime, plannable } from './plan-by-milp.ts';
import { randomFleet, today } from './random-fleet.ts';

const job = (name: string, dueOn: string, outUntil?: string) => ({
  benchId: name as BenchId,
  dueOn: calendarDate(dueOn),
  ...(outUntil === undefined ? {} : { outUntil: calendarDate(outUntil) }),
});

/** Open from Monday to Friday, from Monday 2026-03-02 on. */
const openDays = (weeks: number, inspections: number, closed: readonly string[] = []) =>
  Array.from({ length: 7 * weeks }, (_, day) => addDays(today, day))
    .filter((on, day) => day % 7 < 5 && !closed.includes(on))
    .map((on) => ({ on, inspections }));

const inTime = ({ planned }: LevelPlan) => planned.filter(({ isLate }) => !isLate);

/** The sum over the weeks of (inspections planned)² ÷ (inspections possible). */
const costOf = ({ weeks }: LevelPlan): number =>
  weeks.reduce((sum, { planned, capacity }) => sum + (planned === 0 ? 0 : planned ** 2 / capacity), 0);

describe('a plan worked by hand', () => {
  test('levels eight devices that are all due in the fourth week, and pulls none further forward than it must', () => {
    const jobs = Array.from({ length: 8 }, (_, index) => job(`D${index}`, '2026-03-27'));
    const plan = levelPlan({ today, jobs, days: openDays(4, 4), mostDaysEarly: 60 });
    // 8 over 4 weeks of equal capacity are 2 + 2 + 2 + 2: the cost 4 × 2² ÷ 20 is less than any other sum's.
    expect(plan.weeks.map(({ planned }) => planned)).toEqual([2, 2, 2, 2]);
    const close = levelPlan({ today, jobs, days: openDays(4, 4), mostDaysEarly: 11 });
    // No day before 2026-03-16: 4 + 4.
    expect(close.weeks.map(({ planned }) => planned)).toEqual([0, 0, 4, 4]);
    // Seven do not divide by two: the odd one stays in the later week.
    const seven = levelPlan({ today, jobs: jobs.slice(1), days: openDays(4, 4), mostDaysEarly: 11 });
    expect(seven.weeks.map(({ planned }) => planned)).toEqual([0, 0, 3, 4]);
  });

  test('gives a week with a holiday as much less as it is shorter', () => {
    const jobs = Array.from({ length: 9 }, (_, index) => job(`D${index}`, '2026-03-13'));
    const days = openDays(2, 2, ['2026-03-02', '2026-03-03', '2026-03-04', '2026-03-05']);
    // 2 and 10 can be made: 9 as 1 + 8 costs 1 ÷ 2 + 64 ÷ 10 = 6.9, as 2 + 7 costs 4 ÷ 2 + 49 ÷ 10 = 6.9; the later wins.
    expect(levelPlan({ today, jobs, days, mostDaysEarly: 60 }).weeks.map(({ planned }) => planned)).toEqual([
      1, 8,
    ]);
  });

  test('waits for a device that is out on a job, and calls in the one that would come back too late', () => {
    const jobs = [job('BACK', '2026-03-13', '2026-03-10'), job('GONE', '2026-03-13', '2026-03-16')];
    const plan = levelPlan({ today, jobs, days: openDays(4, 2), mostDaysEarly: 60 });
    expect(plan.calledIn.map(({ benchId }) => benchId)).toEqual(['GONE']);
    expect(plan.planned).toEqual([
      { benchId: 'BACK', dueOn: '2026-03-13', on: '2026-03-11', isLate: false },
      { benchId: 'GONE', dueOn: '2026-03-13', on: '2026-03-17', isLate: true },
    ]);
  });

  test('makes what is overdue as soon as it can, without making anything else late', () => {
    const jobs = [
      job('OVERDUE', '2026-02-20'),
      job('MONDAY', '2026-03-02'),
      job('TUESDAY', '2026-03-03'),
      job('LATER', '2026-03-27'),
    ];
    const plan = levelPlan({ today, jobs, days: openDays(4, 1), mostDaysEarly: 60 });
    expect(plan.planned.slice(0, 3)).toEqual([
      { benchId: 'MONDAY', dueOn: '2026-03-02', on: '2026-03-02', isLate: false },
      { benchId: 'TUESDAY', dueOn: '2026-03-03', on: '2026-03-03', isLate: false },
      { benchId: 'OVERDUE', dueOn: '2026-02-20', on: '2026-03-04', isLate: true },
    ]);
  });

  test('says in which days how many are too many, and makes these as soon as it can', () => {
    const jobs = Array.from({ length: 13 }, (_, index) => job(`D${index}`, '2026-03-06'));
    const plan = levelPlan({ today, jobs, days: openDays(4, 2), mostDaysEarly: 60 });
    expect(plan.shortages).toEqual([{ from: '2026-03-02', until: '2026-03-06', needed: 13, capacity: 10 }]);
    expect(plan.planned.filter(({ isLate }) => isLate).map(({ on }) => on)).toEqual([
      '2026-03-09',
      '2026-03-09',
      '2026-03-10',
    ]);
    const closed = levelPlan({
      today: calendarDate('2026-03-07'),
      jobs: [job('WEEKEND', '2026-03-08')],
      days: openDays(4, 2).slice(5),
      mostDaysEarly: 60,
    });
    expect(closed.shortages).toEqual([{ from: '2026-03-07', until: '2026-03-08', needed: 1, capacity: 0 }]);
  });

  test('leaves what is due after its last day to a later plan, and says what no day is left for', () => {
    const jobs = [job('NEXT', '2026-04-01'), job('A', '2026-02-01'), job('B', '2026-02-02')];
    const plan = levelPlan({ today, jobs, days: openDays(1, 1).slice(0, 1), mostDaysEarly: 60 });
    expect(plan.planned.map(({ benchId }) => benchId)).toEqual(['A']);
    expect(plan.unplanned.map(({ benchId }) => benchId)).toEqual(['B']);
    expect(levelPlan({ today, jobs, days: [], mostDaysEarly: 60 }).planned).toEqual([]);
  });
});

describe('200 random fleets', () => {
  const shape = { devices: 120, calendarDays: 200, mostADay: 3, mostDaysEarly: 70 };
  const fleets = new Map(Array.from({ length: 200 }, (_, seed) => [seed, randomFleet(seed, shape)] as const));

  test('are never inspected later than due, nor on a closed or a full day, nor before they are back, nor too early', () => {
    for (const request of fleets.values()) {
      const plan = levelPlan(request);
      const capacity = new Map(request.days.map(({ on, inspections }) => [on, inspections]));
      const jobs = new Map(request.jobs.map((each) => [each.benchId, each]));
      const seen = new Set<string>();
      for (const { benchId, on, dueOn, isLate } of plan.planned) {
        expect(seen.has(benchId)).toBe(false);
        seen.add(benchId);
        capacity.set(on, (capacity.get(on) ?? 0) - 1);
        expect(capacity.get(on)).toBeGreaterThanOrEqual(0);
        expect(on >= request.today && on > (jobs.get(benchId)?.outUntil ?? '')).toBe(true);
        if (isLate) continue;
        expect(on <= dueOn).toBe(true);
        expect(on >= addDays(dueOn, -request.mostDaysEarly)).toBe(true);
      }
      const reached = request.jobs.filter(({ dueOn }) => dueOn <= (request.days.at(-1)?.on ?? ''));
      expect(seen.size + plan.unplanned.length).toBe(reached.length);
      if (plan.shortages.length === 0) expect(inTime(plan)).toHaveLength(inReachOf(request).length);
    }
  });

  test('are short only where the inspections that must be made within some days are more than these can take', () => {
    let short = 0;
    for (const seed of fleets.keys()) {
      const request = randomFleet(seed, { ...shape, devices: 330 });
      const open = inReachOf(request).map(({ dueOn, outUntil }) => ({
        first: firstDay(request, dueOn, outUntil),
        last: request.days.findLast(({ on }) => on <= dueOn)?.on ?? '',
      }));
      for (const { from, until, needed, capacity } of levelPlan(request).shortages) {
        short += 1;
        const bound = open.filter(({ first, last }) => first >= from && last <= until);
        const possible = request.days
          .filter(({ on }) => on >= from && on <= until)
          .reduce((sum, { inspections }) => sum + inspections, 0);
        expect(capacity).toBe(possible);
        expect(needed).toBeGreaterThan(capacity);
        expect(bound.length).toBeGreaterThanOrEqual(needed);
      }
    }
    expect(short).toBeGreaterThan(50);
  });
});

/** Source: HiGHS, a solver of mixed-integer programs (npm `highs`). */
describe('beside HiGHS on small fleets', () => {
  const shape = { devices: 12, calendarDays: 24, mostADay: 2, mostDaysEarly: 14 };
  const fleets = Array.from({ length: 60 }, (_, seed) => randomFleet(1000 + seed, shape));

  test('as many devices are inspected in time', () => {
    for (const request of fleets)
      expect(inTime(levelPlan(withoutLate(request)))).toHaveLength(mostInTime(withoutLate(request)));
  });

  test('no plan with all of them in time has more level weeks', () => {
    let compared = 0;
    for (const request of fleets.map(withoutLate)) {
      const plan = levelPlan(request);
      if (plan.shortages.length > 0 || request.jobs.length === 0) continue;
      compared += 1;
      expect(costOf(plan)).toBeCloseTo(leastCost(request), 6);
    }
    expect(compared).toBeGreaterThan(20);
  });
});

const withoutLate = (request: PlanRequest): PlanRequest => ({ ...request, jobs: inReachOf(request) });

const inReachOf = (request: PlanRequest) =>
  plannable(request).filter(({ dueOn }) => dueOn <= (request.days.at(-1)?.on ?? ''));

/** The first bench day on which it can be inspected and is not too early. */
const firstDay = (request: PlanRequest, dueOn: string, outUntil: string | undefined): string => {
  const early = addDays(calendarDate(dueOn), -request.mostDaysEarly);
  const back = outUntil === undefined ? request.today : addDays(calendarDate(outUntil), 1);
  return request.days.find(({ on }) => on >= early && on >= back && on >= request.today)?.on ?? '';
};
