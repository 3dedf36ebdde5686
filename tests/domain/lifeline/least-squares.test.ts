/** The straight line, against published worked examples. */
import { describe, expect, test } from 'vitest';
import { leastSquares } from '../../../src/domain/lifeline/least-squares.ts';

const line = (pairs: readonly (readonly [number, number])[]) =>
  leastSquares(pairs.map(([x, y]) => ({ x, y })))!;

/**
 * Oxygen purity (y, %) against hydrocarbon level (x, %): Montgomery and Runger, Applied Statistics and Probability for
 * Engineers, table 11-1; data quoted from memory, results as published in sections 11-2 and 11-6.
 */
const oxygenPurity = [
  [0.99, 90.01],
  [1.02, 89.05],
  [1.15, 91.43],
  [1.29, 93.74],
  [1.46, 96.73],
  [1.36, 94.45],
  [0.87, 87.59],
  [1.23, 91.77],
  [1.55, 99.42],
  [1.4, 93.65],
  [1.19, 93.54],
  [1.15, 92.52],
  [0.98, 90.56],
  [1.01, 89.54],
  [1.11, 89.85],
  [1.2, 90.39],
  [1.26, 93.25],
  [1.32, 93.41],
  [1.43, 94.98],
  [0.95, 87.33],
] as const;

describe('the oxygen purity example', () => {
  const fitted = line(oxygenPurity);

  test('has the published line and variance', () => {
    expect(fitted.intercept).toBeCloseTo(74.283, 3);
    expect(fitted.slope).toBeCloseTo(14.947, 3);
    expect(fitted.residualDeviation ** 2).toBeCloseTo(1.18, 2);
    expect(fitted.degreesOfFreedom).toBe(18);
  });

  test('has the published prediction interval at x = 1.00', () => {
    const { fitted: y, low, high } = fitted.predict(1, 0.95);
    expect(y).toBeCloseTo(89.23, 2);
    expect(low).toBeCloseTo(86.83, 2);
    expect(high).toBeCloseTo(91.63, 2);
  });
});

/** NIST StRD, linear regression, data set "Norris" (x, y); data and certified values quoted from memory. */
const norris = [
  [0.2, 0.1],
  [337.4, 338.8],
  [118.2, 118.1],
  [884.6, 888],
  [10.1, 9.2],
  [226.5, 228.1],
  [666.3, 668.5],
  [996.3, 998.5],
  [448.6, 449.1],
  [777, 778.9],
  [558.2, 559.2],
  [0.4, 0.3],
  [0.6, 0.1],
  [775.5, 778.1],
  [666.9, 668.8],
  [338, 339.3],
  [447.5, 448.9],
  [11.6, 10.8],
  [556, 557.7],
  [228.1, 228.3],
  [995.8, 998],
  [887.6, 888.8],
  [120.2, 119.6],
  [0.3, 0.3],
  [0.3, 0.6],
  [556.8, 557.6],
  [339.1, 339.3],
  [887.2, 888],
  [999, 998.5],
  [779, 778.9],
  [11.1, 10.2],
  [118.3, 117.6],
  [229.2, 228.9],
  [669.1, 668.4],
  [448.9, 449.2],
  [0.5, 0.2],
] as const;

test('the Norris data set has its certified coefficients and residual deviation', () => {
  const fitted = line(norris);
  expect(fitted.intercept).toBeCloseTo(-0.262323073774029, 11);
  expect(fitted.slope).toBeCloseTo(1.00211681802045, 13);
  expect(fitted.residualDeviation).toBeCloseTo(0.884796396144373, 12);
});

test('points that are on a line leave no deviation, and the band has no width', () => {
  const fitted = line([
    [0, 4],
    [1, 3.5],
    [2, 3],
    [5, 1.5],
  ]);
  expect(fitted.residualDeviation).toBeCloseTo(0, 12);
  const { low, high } = fitted.predict(3, 0.95);
  expect([low, high]).toEqual([expect.closeTo(2.5, 9), expect.closeTo(2.5, 9)]);
});

test('two points, and points of one day only, make no line', () => {
  expect(
    leastSquares([
      { x: 0, y: 1 },
      { x: 1, y: 2 },
    ]),
  ).toBeUndefined();
  expect(leastSquares([1, 2, 3].map((y) => ({ x: 4, y })))).toBeUndefined();
});
