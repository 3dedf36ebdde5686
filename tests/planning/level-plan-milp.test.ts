/** The level plan beside the optimum of HiGHS (MILP, https://highs.dev), on small random fleets. */
import loadHighs from 'highs';
import { expect, test } from 'vitest';
import type { Window } from '../../src/planning/earliest-deadline.ts';
import { earliestDeadlineFirst } from '../../src/planning/earliest-deadline.ts';
import { levelLoad } from '../../src/planning/level-load.ts';
import { shortages } from '../../src/planning/shortage.ts';
import { type SeededRandom, seededRandom } from '../support/seeded-random.ts';

const highs = await loadHighs();

interface Instance {
  readonly windows: readonly Window[];
  readonly room: readonly number[];
  readonly taken: readonly number[];
}

const randomInstance = (random: SeededRandom): Instance => {
  const days = random.whole(3, 9);
  const room = Array.from({ length: days }, () => random.pick([0, 1, 2, 3, 4]));
  const taken = room.map((capacity) => (random.next() < 0.3 ? random.whole(0, capacity) : 0));
  const windows = Array.from({ length: random.whole(1, 10) }, () => {
    const first = random.whole(0, days - 1);
    return { first, last: random.whole(first, days - 1) };
  });
  return { windows, room, taken };
};

/** x_j_t: job j is done on day t. z_t_k: day t has at least k inspections more than are on it already. */
const modelOf = ({ windows, room, taken }: Instance) => {
  const jobOnDay = windows.flatMap(({ first, last }, job) =>
    room.flatMap((_, day) => (day >= first && day <= last ? [{ job, day, name: `x_${job}_${day}` }] : [])),
  );
  const steps = room.flatMap((capacity, day) =>
    Array.from({ length: capacity - taken[day]! }, (_, index) => ({
      day,
      name: `z_${day}_${index + 1}`,
      // (k² − (k − 1)²) / room, times 12, so that every coefficient is whole.
      cost: ((2 * (taken[day]! + index + 1) - 1) * 12) / capacity,
    })),
  );
  const sum = (terms: readonly string[]) => (terms.length === 0 ? '0 zero' : terms.join(' + '));
  const days = room.map((_, day) => {
    const onIt = jobOnDay.filter((each) => each.day === day).map(({ name }) => name);
    const counted = steps.filter((each) => each.day === day).map(({ name }) => `- ${name}`);
    return ` d${day}: ${sum(onIt)} ${counted.join(' ')} = 0`;
  });
  const solve = (goal: string, jobRule: '=' | '<=', more: readonly string[] = []) => {
    const jobs = windows.map((_, job) => {
      const terms = jobOnDay.filter((each) => each.job === job).map(({ name }) => name);
      return ` j${job}: ${sum(terms)} ${jobRule} 1`;
    });
    const binaries = [...jobOnDay, ...steps].map(({ name }) => name).join(' ');
    const problem = [
      goal,
      'Subject To',
      ...days,
      ...jobs,
      ...more,
      'Bounds',
      ' zero = 0',
      'Binary',
      ` ${binaries}`,
      'End',
    ];
    return highs.solve(problem.join('\n'), { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.5 });
  };
  const costs = sum(steps.map(({ name, cost }) => `${cost} ${name}`));
  const times = sum(jobOnDay.map(({ name, day }) => `${day} ${name}`));
  return { jobOnDay, steps, solve, costs, times, sum };
};

const fractionless = (value: number): number => {
  expect(Math.abs(value - Math.round(value))).toBeLessThan(1e-5);
  return Math.round(value);
};

test('no plan is more level, and of the most level ones none loses fewer days, on 120 random instances', () => {
  const random = seededRandom(20_261_125);
  let compared = 0;
  while (compared < 120) {
    const instance = randomInstance(random);
    const { windows, room, taken } = instance;
    const free = room.map((capacity, day) => capacity - taken[day]!);
    if (earliestDeadlineFirst(windows, free).includes(-1)) continue;
    const { solve, costs, times } = modelOf(instance);
    const level = solve(`Minimize\n goal: ${costs}`, '=');
    expect(level.Status).toBe('Optimal');
    const best = fractionless(level.ObjectiveValue);
    const latest = solve(`Maximize\n goal: ${times}`, '=', [` level: ${costs} <= ${best}`]);
    expect(latest.Status).toBe('Optimal');

    const load = levelLoad(windows, room, taken);
    const cost = (day: number, count: number) => (count * count * 12) / Math.max(1, room[day]!);
    const ours = room.reduce(
      (total, _, day) => total + cost(day, taken[day]! + load[day]!) - cost(day, taken[day]!),
      0,
    );
    const ourTimes = room.reduce((total, _, day) => total + day * load[day]!, 0);
    expect([fractionless(ours), ourTimes]).toEqual([best, fractionless(latest.ObjectiveValue)]);
    compared += 1;
  }
});

test('no plan places more inspections, and the stretches that are short add up to what is missing, on 120 random instances', () => {
  const random = seededRandom(6);
  let short = 0;
  for (let count = 0; count < 120; count += 1) {
    const { windows, room } = randomInstance(random);
    const instance = { windows, room, taken: room.map(() => 0) };
    const { solve, jobOnDay, sum } = modelOf(instance);
    const most = solve(`Maximize\n goal: ${sum(jobOnDay.map(({ name }) => name))}`, '<=');
    expect(most.Status).toBe('Optimal');
    const missing = windows.length - fractionless(most.ObjectiveValue);
    const dayOf = earliestDeadlineFirst(windows, room);
    expect(dayOf.filter((day) => day === -1)).toHaveLength(missing);
    const stretches = shortages(windows, room);
    expect(stretches.reduce((total, { jobs, room: capacity }) => total + jobs - capacity, 0)).toBe(missing);
    for (const { first, last, jobs, room: capacity } of stretches) {
      expect(windows.filter((each) => each.first >= first && each.last <= last)).toHaveLength(jobs);
      expect(room.slice(first, last + 1).reduce((total, each) => total + each, 0)).toBe(capacity);
    }
    if (missing > 0) short += 1;
  }
  expect(short).toBeGreaterThan(20);
});
