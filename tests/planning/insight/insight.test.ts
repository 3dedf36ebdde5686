/** The statistics of removals against values that others published. */
import { describe, expect, test } from 'vitest';
import { kaplanMeier } from '../../../src/planning/insight/kaplan-meier.ts';
import { cohensKappa } from '../../../src/planning/insight/kappa.ts';
import { pareto } from '../../../src/planning/insight/pareto.ts';
import { wilson } from '../../../src/planning/insight/wilson.ts';

/** Weeks in remission of the 21 patients on 6-MP; `+` was still in remission (Freireich et al., 1963). */
const sixMp = '6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+'
  .split(' ')
  .map((text) => ({
    time: Number.parseInt(text, 10),
    isRemoved: !text.endsWith('+'),
  }));

describe('survival', () => {
  test('is that of the 6-MP arm of Freireich et al. 1963, published', () => {
    const { steps, devices, removed } = kaplanMeier(sixMp);
    expect([devices, removed]).toEqual([21, 9]);
    expect(steps.map(({ time, survival }) => [time, Number(survival.toFixed(3))])).toEqual([
      [6, 0.857],
      [7, 0.807],
      [10, 0.753],
      [13, 0.69],
      [16, 0.627],
      [22, 0.538],
      [23, 0.448],
    ]);
  });

  /** Of the same patients, as statistics packages print it for the log-log scale; from memory. */
  test('has Greenwood’s standard error and the log-log band of the same patients, from memory', () => {
    const { steps } = kaplanMeier(sixMp);
    const four = (value: number) => Number(value.toFixed(4));
    expect(steps.map((step) => [four(step.standardError), four(step.lower), four(step.upper)])).toEqual([
      [0.0764, 0.6197, 0.9516],
      [0.0869, 0.5631, 0.9228],
      [0.0963, 0.5032, 0.8894],
      [0.1068, 0.4316, 0.8491],
      [0.1141, 0.3675, 0.8049],
      [0.1282, 0.2678, 0.7468],
      [0.1346, 0.1881, 0.6801],
    ]);
  });

  test('has as its median the first time at which half or fewer are left', () => {
    expect(kaplanMeier(sixMp).median).toBe(23);
    expect(kaplanMeier(sixMp.slice(0, 4)).median).toBe(6);
    expect(kaplanMeier([{ time: 5, isRemoved: false }]).median).toBeUndefined();
  });

  test('ends at nothing where the last of all is removed, and has no steps where none is', () => {
    const gone = kaplanMeier([
      { time: 1, isRemoved: true },
      { time: 2, isRemoved: true },
    ]);
    expect(gone.steps.map(({ survival, lower, upper }) => [survival, lower, upper])[1]).toEqual([0, 0, 0]);
    expect(kaplanMeier([]).steps).toEqual([]);
  });
});

/** Newcombe, Statistics in Medicine 17 (1998), table I, method 3; published. */
test.each([
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
])('the score interval of %i in %i is that of Newcombe 1998', (count, of, lower, upper) => {
  const proportion = wilson(count, of);
  expect([proportion.lower, proportion.upper].map((bound) => Number(bound.toFixed(4)))).toEqual([
    lower,
    upper,
  ]);
});

test('of none nothing is known, and of all the interval ends at one', () => {
  expect(wilson(0, 0)).toMatchObject({ lower: 0, upper: 1 });
  expect(wilson(20, 20).upper).toBe(1);
  expect(wilson(20, 20).lower).toBeCloseTo(1 - 0.1611, 4);
});

/** The cells of a table of agreement, row by row. */
const table = (answers: readonly string[], cells: readonly (readonly number[])[]) =>
  cells.flatMap((row, first) =>
    row.flatMap((count, second) =>
      Array.from({ length: count }, () => [answers[first]!, answers[second]!] as const),
    ),
  );

describe('agreement', () => {
  test('is that of the textbook example of 50 proposals read by two readers, 20, 5, 10 and 15, from memory', () => {
    const { pairs, observed, expected, kappa } = cohensKappa(
      table(
        ['yes', 'no'],
        [
          [20, 5],
          [10, 15],
        ],
      ),
    );
    expect(pairs).toBe(50);
    expect(observed).toBeCloseTo(0.7, 12);
    expect(expected).toBeCloseTo(0.5, 12);
    expect(kappa).toBeCloseTo(0.4, 12);
  });

  /** Fleiss, Statistical Methods for Rates and Proportions, the diagnoses of 100 patients by two raters: 0.68; from memory. */
  test('is that of Fleiss’s 100 patients in three diagnoses, 0.68, from memory', () => {
    const { kappa } = cohensKappa(
      table(
        ['psychotic', 'neurotic', 'organic'],
        [
          [75, 1, 4],
          [5, 4, 1],
          [0, 0, 10],
        ],
      ),
    );
    expect(kappa?.toFixed(2)).toBe('0.68');
  });

  /**
   * Reference manual of the R package statpsych, example of ci.kappa(.05, 31, 12, 4, 58), published: Cohen kappa 0.6756757,
   * SE 0.07344761, 0.5317210 to 0.8196303.
   */
  test('has the error and the interval of the published example of statpsych, 31, 12, 4 and 58', () => {
    const { kappa, standardError, lower, upper } = cohensKappa(
      table(
        ['no', 'yes'],
        [
          [31, 12],
          [4, 58],
        ],
      ),
    );
    expect([kappa, standardError, lower, upper].map((value) => value?.toFixed(7))).toEqual([
      '0.6756757',
      '0.0734476',
      '0.5317210',
      '0.8196303',
    ]);
  });

  /**
   * SAS/STAT User's Guide, the FREQ procedure, “Agreement Study”: the table of two dermatologists is published there; kappa
   * 0.3449, its error 0.0724 and the interval 0.2030 to 0.4868 are quoted from memory.
   */
  test('is that of two dermatologists with four answers in the SAS/STAT User’s Guide', () => {
    const { kappa, standardError, lower, upper } = cohensKappa(
      table(
        ['terrible', 'poor', 'marginal', 'clear'],
        [
          [10, 4, 1, 0],
          [5, 10, 12, 2],
          [2, 4, 12, 5],
          [0, 2, 6, 13],
        ],
      ),
    );
    expect([kappa, standardError, lower, upper].map((value) => value?.toFixed(4))).toEqual([
      '0.3449',
      '0.0724',
      '0.2030',
      '0.4868',
    ]);
  });

  test('has no interval where nobody ever differed, and keeps one within −1 and 1', () => {
    const same = cohensKappa(
      table(
        ['yes', 'no'],
        [
          [3, 0],
          [0, 2],
        ],
      ),
    );
    expect([same.kappa, same.lower, same.upper]).toEqual([1, undefined, undefined]);
    const few = cohensKappa(
      table(
        ['yes', 'no'],
        [
          [1, 1],
          [1, 0],
        ],
      ),
    );
    expect(few.kappa).toBeLessThan(0);
    expect(few.lower).toBe(-1);
  });

  test('is not known where both always say the same one thing, nor of no pairs', () => {
    expect(cohensKappa(table(['good'], [[30]]))).toEqual({ pairs: 30, observed: 1, expected: 1 });
    expect(cohensKappa([]).kappa).toBeUndefined();
  });
});

test('the bars of a Pareto chart stand the most frequent first, and add up', () => {
  expect(pareto(['hook', 'lifeline', 'lifeline', 'brake', 'lifeline'])).toEqual([
    { key: 'lifeline', count: 3, share: 0.6, cumulative: 0.6 },
    { key: 'hook', count: 1, share: 0.2, cumulative: 0.8 },
    { key: 'brake', count: 1, share: 0.2, cumulative: 1 },
  ]);
  expect(pareto([])).toEqual([]);
});
