/** The trend of the least diameter over the inspections of a device. */
import { describe, expect, test } from 'vitest';
import { calendarDate, metres, millimetres } from '../../../src/domain/brand.ts';
import { isBelowMinimum } from '../../../src/domain/lifeline/below-minimum.ts';
import { type DiameterPoint, diameterPoints, diameterTrend } from '../../../src/domain/lifeline/trend.ts';

const point = (inspection: number, on: string, diameterMm: number): DiameterPoint => ({
  inspection,
  on: calendarDate(on),
  diameterMm,
});

describe('the points of a trend', () => {
  test('are the least reading of each inspection that has readings, oldest first', () => {
    const inspection = (number: number, on: string, ...readings: readonly number[]) => ({
      inspection: number,
      state: 'signed' as const,
      on: calendarDate(on),
      findings: [],
      readings: readings.map((diameterMm, index) => ({
        positionM: metres(index),
        diameterMm: millimetres(diameterMm),
      })),
    });
    expect(
      diameterPoints([
        inspection(9, '2026-02-01', 4.7, 4.55, 4.6),
        inspection(5, '2025-02-01', 4.75, 4.7),
        inspection(7, '2025-08-01'),
      ]),
    ).toEqual([point(5, '2025-02-01', 4.7), point(9, '2026-02-01', 4.55)]);
  });
});

describe('a trend', () => {
  test('takes readings of three days: fewer are said to be too few', () => {
    const two = [point(1, '2024-01-01', 4.8), point(2, '2025-01-01', 4.7)];
    for (const points of [[], two.slice(0, 1), two, [...two, point(3, '2025-01-01', 4.69)]])
      expect(diameterTrend(points)).toEqual({ kind: 'too few', points, needed: 3 });
    expect(diameterTrend([...two, point(3, '2026-01-01', 4.6)]).kind).toBe('trend');
  });

  test('is the slope in millimetres a year', () => {
    // Along a line by hand: 0.1 mm in 1,461 days (four years, one of them a leap year) is 0.1 × 365.2425 / 1461 a year.
    const trend = diameterTrend([
      point(1, '2022-01-01', 4.8),
      point(2, '2024-01-01', 4.8 - (0.1 * 730) / 1461),
      point(3, '2026-01-01', 4.7),
    ]);
    if (trend.kind !== 'trend') throw new Error(trend.kind);
    expect(trend.changeMmPerYear).toBeCloseTo((-0.1 * 365.2425) / 1461, 9);
    expect(trend.residualDeviationMm).toBeCloseTo(0, 9);
  });

  test('ends with the last reading: its band says nothing of a later day', () => {
    const points = [
      point(1, '2023-05-04', 4.8),
      point(2, '2024-05-02', 4.76),
      point(3, '2025-05-06', 4.74),
      point(4, '2026-05-05', 4.66),
    ];
    const trend = diameterTrend(points);
    if (trend.kind !== 'trend') throw new Error(trend.kind);
    expect(trend.band[0]!.on).toBe('2023-05-04');
    expect(trend.band.at(-1)!.on).toBe('2026-05-05');
    for (const { lowMm, fittedMm, highMm } of trend.band)
      expect(lowMm < fittedMm && fittedMm < highMm).toBe(true);
  });

  test('of three inspections has the wide band that one degree of freedom leaves', () => {
    // By hand: x = 0, 1, 2 (equal steps), y = 4.8, 4.75, 4.66; fitted 4.8067, 4.7367, 4.6667; residuals −1/150, 2/150, −1/150;
    // s = √(6/150² / 1) = 0.01633; at x = 1: 12.706 × s × √(1 + 1/3) = 0.2396.
    const trend = diameterTrend([
      point(1, '2025-01-01', 4.8),
      point(2, '2025-01-31', 4.75),
      point(3, '2025-03-02', 4.66),
    ]);
    if (trend.kind !== 'trend') throw new Error(trend.kind);
    const middle = trend.band.find(({ on }) => on === '2025-01-31')!;
    expect(middle.fittedMm).toBeCloseTo(4.7367, 4);
    expect(middle.highMm - middle.fittedMm).toBeCloseTo(0.2396, 4);
  });
});

test('a reading is held against the minimum to the hundredth of a millimetre', () => {
  expect(isBelowMinimum(4.3, 4.3)).toBe(false);
  expect(isBelowMinimum(4.29, 4.3)).toBe(true);
  // 0.17 in = 4.318 mm exactly, and 0.169 in = 4.2926 mm (1 in = 25.4 mm, NIST SP 811).
  expect(isBelowMinimum(0.17 * 25.4, 4.318)).toBe(false);
  expect(isBelowMinimum(0.169 * 25.4, 4.318)).toBe(true);
});
