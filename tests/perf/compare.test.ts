/** How two runs of the benchmarks are held against each other. */
import { expect, test } from 'vitest';
import { comparedRuns } from './compare.ts';
import type { Machine } from './machine.ts';
import { noiseOf } from './measurement.ts';
import { tableOf } from './table.ts';

const machine: Machine = {
  processor: 'invented',
  cores: 2,
  memoryGb: 8,
  system: 'none',
  node: 'v20',
  sqlite: '3',
  chromium: 'none',
  commit: 'abc',
};

const runOf = (figures: readonly { name: string; value: number; noise?: number }[]) => ({
  machine,
  busyBefore: 0,
  long: false,
  seconds: 1,
  benchmarks: [{ name: 'desk', peer: 'none', figures: figures.map((each) => ({ unit: 'ms', ...each })) }],
});

test('a figure has moved where it changed by more than the noise of both runs, and never within a twentieth', () => {
  const before = runOf([
    { name: 'quiet', value: 100, noise: 0.01 },
    { name: 'slower', value: 100, noise: 0.04 },
    { name: 'noisy', value: 100, noise: 0.15 },
    { name: 'once', value: 100 },
    { name: 'once, far', value: 100 },
    { name: 'gone', value: 1 },
  ]);
  const after = runOf([
    { name: 'quiet', value: 104.9, noise: 0.01 },
    { name: 'slower', value: 109, noise: 0.04 },
    { name: 'noisy', value: 125, noise: 0.15 },
    { name: 'once', value: 119, noise: 0.01 },
    { name: 'once, far', value: 79 },
    { name: 'new', value: 2 },
  ]);
  const compared = comparedRuns(before, after);
  expect(compared.filter(({ moved }) => moved).map(({ name }) => name)).toEqual([
    'desk: slower',
    'desk: once, far',
  ]);
  expect(compared.find(({ name }) => name === 'desk: slower')?.change).toBeCloseTo(0.09, 10);
  expect(compared.map(({ name }) => name)).toContain('desk: new');
  expect(compared.find(({ name }) => name === 'desk: gone')).toMatchObject({ before: 1, moved: false });
});

test('the noise of repeats is the notch of their box plot, as a share of the median', () => {
  // Median 5, quartiles 3 and 7, nine values: 1.57 × 4 ÷ 3 ÷ 5.
  expect(noiseOf([9, 1, 8, 2, 7, 3, 6, 4, 5])).toBeCloseTo(0.41867, 4);
  expect(noiseOf([3, 3, 3])).toBe(0);
});

test('a table has its numbers to the right and its words to the left', () => {
  expect(
    tableOf(
      ['what', 'how many'],
      [
        ['a', '1'],
        ['longer', '22'],
      ],
      [1],
    ).split('\n'),
  ).toEqual(['what    how many', '──────  ────────', 'a              1', 'longer        22']);
});
