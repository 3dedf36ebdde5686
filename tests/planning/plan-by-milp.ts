/** The same plan as a mixed-integer program, solved by HiGHS: an independent peer for small fleets. */
import highs from 'highs';
import { addDays, mondayOf } from '../../src/domain/calendar.ts';
import type { PlannedJob, PlanRequest } from '../../src/planning/level-plan.ts';

/** Devices that can be inspected in time as far as their own dates go. */
export const plannable = ({ jobs, today }: PlanRequest): readonly PlannedJob[] =>
  jobs.filter(({ dueOn, outUntil }) => dueOn >= today && (outUntil === undefined || outUntil < dueOn));

const solver = await highs();

/** How many of them can be inspected in time together. */
export const mostInTime = (request: PlanRequest): number => {
  const { days, jobs } = choices(request);
  if (days.length === 0 || jobs.every(({ open }) => open.length === 0)) return 0;
  return Math.round(
    solve([
      'Maximize',
      `obj: ${sum(jobs.flatMap(({ open }) => open))}`,
      'Subject To',
      ...jobs.filter(({ open }) => open.length > 0).map(({ open }) => `${sum(open)} <= 1`),
      ...capacityRows(days),
      'Binary',
      ...jobs.flatMap(({ open }) => open),
      'End',
    ]),
  );
};

/** The least sum over the weeks of (inspections planned)² ÷ (inspections possible), with all of them in time. */
export const leastCost = (request: PlanRequest): number => {
  const { days, jobs, weeks } = choices(request);
  const steps = weeks.flatMap(({ capacity, week }) =>
    Array.from({ length: capacity }, (_, step) => ({
      name: `z_${week}_${step}`,
      cost: (2 * step + 1) / capacity,
    })),
  );
  return solve([
    'Minimize',
    `obj: ${steps.map(({ name, cost }) => `${cost} ${name}`).join(' + ')}`,
    'Subject To',
    ...jobs.map(({ open }) => `${sum(open)} = 1`),
    ...capacityRows(days),
    ...weeks.map(({ week, own, capacity }) =>
      [sum(own), ...Array.from({ length: capacity }, (_, step) => `- z_${week}_${step}`), '= 0'].join(' '),
    ),
    'Bounds',
    ...steps.map(({ name }) => `0 <= ${name} <= 1`),
    'Binary',
    ...jobs.flatMap(({ open }) => open),
    'End',
  ]);
};

const solve = (lines: readonly string[]): number => {
  const { Status, ObjectiveValue } = solver.solve(lines.join('\n'), { mip_rel_gap: 0 });
  if (Status !== 'Optimal') throw new Error(`HiGHS: ${Status}`);
  return ObjectiveValue;
};

const sum = (names: readonly string[]): string => names.join(' + ');

/** `y_3_5`: device 3 is inspected on bench day 5. */
const choices = (request: PlanRequest) => {
  const jobs = plannable(request).map(({ dueOn, outUntil }, job) => ({
    open: request.days.flatMap(({ on }, day) =>
      on >= request.today &&
      on <= dueOn &&
      on >= addDays(dueOn, -request.mostDaysEarly) &&
      (outUntil === undefined || on > outUntil)
        ? [`y_${job}_${day}`]
        : [],
    ),
  }));
  const days = request.days.map(({ on, inspections }, day) => ({
    monday: mondayOf(on),
    inspections,
    own: jobs.flatMap(({ open }) => open.filter((name) => name.endsWith(`_${day}`))),
  }));
  const weeks = [...new Set(days.map(({ monday }) => monday))]
    .map((monday, week) => {
      const inWeek = days.filter((day) => day.monday === monday);
      return {
        week,
        capacity: inWeek.reduce((total, { inspections }) => total + inspections, 0),
        own: inWeek.flatMap(({ own }) => own),
      };
    })
    .filter(({ own }) => own.length > 0);
  return { jobs, days, weeks };
};

const capacityRows = (days: ReturnType<typeof choices>['days']): readonly string[] =>
  days.filter(({ own }) => own.length > 0).map(({ own, inspections }) => `${sum(own)} <= ${inspections}`);
