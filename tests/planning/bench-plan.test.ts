/** The plan of the bench: what it promises, on hand-made fleets and on random ones. */
import { describe, expect, test } from 'vitest';
import { type BenchCapacity, inspectionsIn } from '../../src/domain/bench-capacity.ts';
import { type BenchId, type CalendarDate, calendarDate } from '../../src/domain/brand.ts';
import { addDays, daysBetween } from '../../src/domain/calendar.ts';
import { benchDays } from '../../src/planning/bench-day.ts';
import { type BenchPlan, benchPlan, type PlanDevice } from '../../src/planning/bench-plan.ts';
import { type SeededRandom, seededRandom } from '../support/seeded-random.ts';

const id = (name: string | number): BenchId => `D${name}` as BenchId;
const day = (text: string): CalendarDate => calendarDate(text);

/** A Tuesday (from memory, and by the calendar of any phone). */
const tuesday = day('2026-03-10');

const everyday: BenchCapacity['hours'] = {
  monday: 1,
  tuesday: 1,
  wednesday: 1,
  thursday: 1,
  friday: 1,
  saturday: 0,
  sunday: 0,
};
/** Two inspections a day from Monday to Friday. */
const twoADay: BenchCapacity = {
  hours: everyday,
  minutesPerInspection: 30,
  closures: [],
  mostDaysEarly: 60,
};

const planOf = (
  devices: readonly PlanDevice[],
  capacity: BenchCapacity = twoADay,
  horizon = 366,
): BenchPlan => benchPlan(devices, benchDays(tuesday, horizon, capacity), capacity.mostDaysEarly);

const dueOn = (name: string, on: string, more: Partial<PlanDevice> = {}): PlanDevice => ({
  benchId: id(name),
  dueOn: day(on),
  ...more,
});

const daysOf = ({ planned }: BenchPlan) =>
  Object.fromEntries(planned.map(({ benchId, on }) => [benchId, on]));

describe('the days of the bench', () => {
  test('have no room on weekdays without hours, nor within a closure, both of its days included', () => {
    const closures = [{ from: day('2026-03-12'), until: day('2026-03-13'), name: 'Stocktaking' }];
    const days = benchDays(tuesday, 7, { ...twoADay, closures });
    expect(days.map(({ on, room }) => [on, room])).toEqual([
      ['2026-03-10', 2],
      ['2026-03-11', 2],
      ['2026-03-12', 0],
      ['2026-03-13', 0],
      ['2026-03-14', 0],
      ['2026-03-15', 0],
      ['2026-03-16', 2],
    ]);
  });

  test('take whole inspections only: four hours of 45 minutes are five', () => {
    expect(inspectionsIn(4, { ...twoADay, minutesPerInspection: 45 })).toBe(5);
  });
});

describe('a plan', () => {
  test('leaves a device alone until the bench day on which it is due, where nothing else comes up', () => {
    const plan = planOf([dueOn('a', '2026-04-15'), dueOn('b', '2026-04-19')]);
    // 19 April 2026 is a Sunday; the Friday before is the 17th.
    expect(daysOf(plan)).toEqual({ Da: '2026-04-15', Db: '2026-04-17' });
    expect(plan.planned.map(({ daysEarly }) => daysEarly)).toEqual([0, 2]);
  });

  test('spreads what is due on one day over the days before it, one a day', () => {
    const plan = planOf(['a', 'b', 'c', 'd'].map((name) => dueOn(name, '2026-04-16')));
    expect(plan.planned.map(({ on }) => on)).toEqual([
      '2026-04-13',
      '2026-04-14',
      '2026-04-15',
      '2026-04-16',
    ]);
  });

  test('does not take a device in the first half of its interval, nor earlier than was chosen', () => {
    const crowd = Array.from({ length: 40 }, (_, index) =>
      dueOn(`${index}`, '2026-06-10', { lastInspectedOn: tuesday }),
    );
    // 92 days from 10 March to 10 June: not before day 46, 25 April.
    const plan = planOf(crowd);
    expect(plan.planned[0]?.on).toBe('2026-04-27');
    expect(plan.earliestDays).toBe(60);
    // Monday 8 to Wednesday 10 June have room for six.
    const held = planOf(crowd.slice(0, 6), { ...twoADay, mostDaysEarly: 3 });
    expect(held.planned.every(({ daysEarly }) => daysEarly <= 3)).toBe(true);
  });

  test('reaches further than was chosen only by the fewest days with which every due date is kept', () => {
    // Monday 15 to Friday 19 June 2026 have room for ten; the eleventh needs Friday the 12th, 7 days before.
    const crowd = Array.from({ length: 11 }, (_, index) => dueOn(`${index}`, '2026-06-19'));
    const plan = planOf(crowd, { ...twoADay, mostDaysEarly: 3 });
    expect(plan.earliestDays).toBe(7);
    expect(plan.unplanned).toEqual([]);
    expect(Math.max(...plan.planned.map(({ daysEarly }) => daysEarly))).toBe(7);
  });

  test('takes overdue devices first, as soon as that makes no other late', () => {
    const plan = planOf([
      dueOn('late', '2026-03-01'),
      dueOn('later', '2026-03-05'),
      dueOn('latest', '2026-03-09'),
      dueOn('today', '2026-03-10'),
      dueOn('far', '2026-05-01'),
    ]);
    expect(daysOf(plan)).toMatchObject({
      Dtoday: '2026-03-10',
      Dlate: '2026-03-10',
      Dlater: '2026-03-11',
      Dlatest: '2026-03-11',
    });
    expect(plan.planned.filter(({ kind }) => kind === 'overdue').map(({ daysEarly }) => daysEarly)).toEqual([
      0, 0, 0,
    ]);
  });

  test('takes devices that were never inspected into the room that is left, as soon as possible', () => {
    const plan = planOf([{ benchId: id('new') }, dueOn('late', '2026-03-09'), dueOn('today', '2026-03-10')]);
    expect(daysOf(plan)).toEqual({ Dlate: '2026-03-10', Dtoday: '2026-03-10', Dnew: '2026-03-11' });
  });

  test('waits for a device that is out until the day after it comes back', () => {
    const plan = planOf([dueOn('a', '2026-03-13', { outUntil: day('2026-03-12') })]);
    expect(plan.planned).toMatchObject([{ on: '2026-03-13', callIn: false }]);
  });

  test('has a device called in that would come back too late for the bench, and keeps its room', () => {
    const plan = planOf([
      dueOn('past', '2026-03-20', { outUntil: day('2026-03-25') }),
      // Back on Friday the 20th, due on Sunday the 22nd: the bench is closed between.
      dueOn('weekend', '2026-03-22', { outUntil: day('2026-03-20') }),
    ]);
    expect(plan.planned).toMatchObject([
      { benchId: 'Dpast', on: expect.stringMatching(/^2026-03-(19|20)$/), callIn: true },
      { benchId: 'Dweekend', on: expect.stringMatching(/^2026-03-(19|20)$/), callIn: true },
    ]);
  });

  test('that cannot keep every due date says how many are missing, and in which days', () => {
    const crowd = Array.from({ length: 9 }, (_, index) => dueOn(`${index}`, '2026-03-12'));
    const plan = planOf([...crowd, dueOn('far', '2026-05-01')]);
    // Tuesday to Thursday: six.
    expect(plan.shortages).toEqual([{ from: '2026-03-10', until: '2026-03-12', inspections: 9, room: 6 }]);
    expect(plan.unplanned).toHaveLength(3);
    expect(plan.planned.find(({ benchId }) => benchId === 'Dfar')?.on).toBe('2026-05-01');
  });

  test('counts what is due after its last day, and plans nothing for it', () => {
    const plan = planOf([dueOn('a', '2026-04-01'), dueOn('b', '2027-08-01')]);
    expect([plan.planned.length, plan.dueLater]).toEqual([1, 1]);
  });
});

const randomFleet = (random: SeededRandom): { devices: readonly PlanDevice[]; capacity: BenchCapacity } => {
  const hours = Object.fromEntries(
    Object.keys(everyday).map((weekday) => [weekday, random.pick([0, 0.5, 1, 2, 4])]),
  ) as BenchCapacity['hours'];
  const closures = Array.from({ length: random.whole(0, 6) }, () => {
    const from = addDays(tuesday, random.whole(0, 300));
    return { from, until: addDays(from, random.whole(0, 14)) };
  });
  const crowded = random.next() < 0.3;
  const devices = Array.from({ length: random.whole(0, 150) }, (_, index): PlanDevice => {
    if (random.next() < 0.05) return { benchId: id(index) };
    const due = addDays(tuesday, crowded ? random.whole(20, 40) : random.whole(-20, 365));
    return {
      benchId: id(index),
      dueOn: due,
      ...(random.next() < 0.8 ? { lastInspectedOn: addDays(due, -random.pick([91, 182, 365])) } : {}),
      ...(random.next() < 0.2 ? { outUntil: addDays(tuesday, random.whole(-5, 60)) } : {}),
    };
  });
  return {
    devices,
    capacity: { hours, closures, minutesPerInspection: 30, mostDaysEarly: random.whole(0, 90) },
  };
};

test('on 200 random fleets nothing is planned late, beyond the room of a day, on a closed one, or while it is out', () => {
  let short = 0;
  for (let seed = 1; seed <= 200; seed += 1) {
    const { devices, capacity } = randomFleet(seededRandom(seed));
    const plan = planOf(devices, capacity);
    const room = new Map(plan.days.map((each) => [each.on, each.room]));
    const load = new Map<CalendarDate, number>();
    for (const { on } of plan.planned) load.set(on, (load.get(on) ?? 0) + 1);
    for (const [on, count] of load) expect(count, `${seed} ${on}`).toBeLessThanOrEqual(room.get(on) ?? 0);
    const given = new Map(devices.map((device) => [device.benchId, device]));
    for (const { benchId, on, kind, callIn, daysEarly } of plan.planned) {
      const device = given.get(benchId)!;
      if (kind !== 'due') continue;
      expect(on <= device.dueOn!, `${seed} ${benchId}`).toBe(true);
      expect(daysEarly).toBe(daysBetween(on, device.dueOn!));
      expect(daysEarly).toBeLessThanOrEqual(plan.earliestDays);
      if (!callIn && device.outUntil !== undefined) expect(on > device.outUntil).toBe(true);
    }
    const ids = [...plan.planned, ...plan.unplanned].map(({ benchId }) => benchId);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length + plan.dueLater).toBe(devices.length);
    const missing = plan.shortages.reduce(
      (total, { inspections, room: has }) => total + inspections - has,
      0,
    );
    expect(plan.unplanned.filter(({ kind }) => kind === 'due')).toHaveLength(missing);
    if (missing > 0) short += 1;
  }
  expect(short).toBeGreaterThan(10);
  expect(short).toBeLessThan(190);
});
