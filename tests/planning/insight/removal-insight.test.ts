/** What the removals of a depot say, on a depot of six devices that can be counted by hand. */
import { expect, test } from 'vitest';
import type { CalendarDate } from '../../../src/domain/brand.ts';
import { type DeviceLife, groupsBy, survivalOf } from '../../../src/planning/insight/removal-insight.ts';

const day = (text: string) => text as CalendarDate;
const today = day('2026-03-10');

const life = (model: string, more: Partial<DeviceLife> = {}): DeviceLife => ({
  model,
  ratedLengthM: 6,
  yearMade: 2023,
  inServiceFrom: day('2026-01-01'),
  removals: [],
  ...more,
});
const depot: readonly DeviceLife[] = [
  life('A', { removals: [{ on: day('2026-01-11'), zones: ['lifeline', 'marking'] }] }),
  life('A', {
    removals: [
      { on: day('2026-01-31'), zones: ['lifeline'] },
      { on: day('2026-02-10'), zones: ['brake'] },
    ],
  }),
  life('A', { yearMade: 2015 }),
  life('B', { ratedLengthM: 10, typeOfUse: 'severe to continuous' }),
  life('B', {
    ratedLengthM: 10,
    yearMade: undefined,
    removals: [{ on: day('2026-01-11'), zones: ['lifeline'] }],
  }),
  // Never in service and never removed: it says nothing.
  life('C', { inServiceFrom: undefined }),
];

test('reasons are counted over all removals, and devices once', () => {
  const [all] = groupsBy(depot, 'all', today);
  expect(all).toMatchObject({ devices: 5, removed: { count: 3, of: 5 }, reasonCount: 5, isFew: true });
  expect(all?.reasons.map(({ key, count }) => [key, count])).toEqual([
    ['lifeline', 3],
    ['marking', 1],
    ['brake', 1],
  ]);
});

test.each([
  [
    'model',
    [
      ['A', 3],
      ['B', 2],
    ],
  ],
  [
    'length',
    [
      ['6', 3],
      ['10', 2],
    ],
  ],
  // Made in 2023 and looked at in 2026: 3 years, from 2 on; made in 2015: 11 years.
  [
    'age',
    [
      ['2', 3],
      ['10', 1],
      ['unknown', 1],
    ],
  ],
  [
    'use',
    [
      ['unknown', 4],
      ['severe to continuous', 1],
    ],
  ],
] as const)('devices are grouped by %s, the largest group first', (by, groups) => {
  expect(groupsBy(depot, by, today).map(({ value, devices }) => [value, devices])).toEqual(groups);
});

test('days are counted from the first pass until the first removal, or until today', () => {
  const { steps, devices, removed, longest } = survivalOf(depot, today);
  expect([devices, removed, longest]).toEqual([5, 3, 68]);
  // Two of five removed after 10 days: 3/5 left; one of three after 30 days: 2/5 left.
  expect(steps.map(({ time, atRisk, survival }) => [time, atRisk, Number(survival.toFixed(6))])).toEqual([
    [10, 5, 0.6],
    [30, 3, 0.4],
  ]);
});
